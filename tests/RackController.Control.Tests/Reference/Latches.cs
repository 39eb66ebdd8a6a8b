using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Plain questions about latches.</summary>
internal static class Latches
{
    /// <summary>Whether a latch caught before and nobody has reset it since.</summary>
    public static bool Stands(Chronicle story, string key) =>
        story.Before(key, story.Last).Latched && !story.Now.Released.Contains(key);

    /// <summary>The pages since a latch was last reset, that one with them.</summary>
    public static IEnumerable<int> PagesSinceReset(Chronicle story, string key)
    {
        for (var page = story.Last; page >= 0; page--)
        {
            yield return page;
            if (story.Pages[page].Released.Contains(key))
            {
                break;
            }
        }
    }

    /// <summary>How many trips the last 24 hours saw since the last reset.</summary>
    public static int TripsOfADay(Chronicle story, string key, Func<int, bool> isTrip) =>
        PagesSinceReset(story, key).Count(page => story.Ago(page) <= Duration.FromHours(24) && isTrip(page));

    /// <summary>Which latches the requests of the last page reset: each was asked for while it had caught, then confirmed within the time,
    /// with nothing asked for in between, and its cause was gone at the scan before.</summary>
    public static HashSet<string> Released(Chronicle story)
    {
        var within = story.Site.Racks.Min(rack => rack.Limits.ResetConfirmWithin);
        var released = new HashSet<string>();
        (string Key, MonotonicTime At)? asked = null;
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var now = story.Pages[page].At.Monotonic;
            released.Clear();
            foreach (var request in story.Pages[page].Requests)
            {
                bool IsLatched(string key) => story.Before(key, page).Latched && !released.Contains(key);
                if (request is ResetLatch ask)
                {
                    asked = IsLatched(ask.Latch) ? (ask.Latch, now) : null;
                }
                else if (request is ConfirmReset confirm && asked is { } first && first.Key == confirm.Latch && now <= first.At + within)
                {
                    asked = null;
                    if (story.IsFirstOfItsRun(page) || !story.Before(confirm.Latch, page).Present)
                    {
                        released.Add(confirm.Latch);
                    }
                }
            }
        }

        return released;
    }
}
