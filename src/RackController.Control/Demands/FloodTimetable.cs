using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Says when floods should begin: by the wall clock while it is trusted, at the mean spacing while it is not. It only
/// calls for floods; whether and when the pump runs is for the flood cycle and the interlocks.
/// </summary>
internal sealed class FloodTimetable
{
    private readonly string key;
    private readonly DateTimeZone zone;
    private readonly FloodCalendar calendar;
    private readonly WallFloods wall;
    private readonly SpacedFloods spaced;
    private bool wasTrusted;
    private bool skipsNext;

    /// <summary>When the last flood at the mean spacing began, in this run of the controller. It is not remembered: across a
    /// restart without a clock nobody knows how long ago it was, and a crop takes one flood too many better than a day
    /// without.</summary>
    private MonotonicTime? lastSpaced;

    public FloodTimetable(string key, Site site, Rack rack, MemoryReader memory, Moment start)
    {
        this.key = key;
        zone = site.Zone;
        calendar = new FloodCalendar(rack.Schedule, zone);
        wall = new WallFloods($"{key}/flood", rack.Schedule.Floods, calendar, zone, memory, start);
        spaced = new SpacedFloods($"{key}/last-flood", calendar.MeanSpacing, memory, start.Monotonic);
        skipsNext = memory.Number($"{key}/skip-next") == 1;
    }

    /// <summary>Rises when something changed that must be remembered.</summary>
    public long Version { get; private set; }

    /// <summary>Says whether a flood came due at this scan.</summary>
    public FloodCall Update(ScheduleClock clock, in Moment now)
    {
        if (calendar.IsEmpty)
        {
            return default;
        }

        var call = clock.IsTrusted ? ByWall(clock, now) : BySpacing(now);
        Version += call.IsNothing ? 0 : 1;
        wasTrusted = clock.IsTrusted;
        return call;
    }

    /// <summary>Names when the next flood comes due, after one that began now may have moved it.</summary>
    public void NameDue(ScheduleClock clock, Agenda agenda)
    {
        if (!calendar.IsEmpty)
        {
            agenda.Add(clock.IsTrusted ? clock.Comes(wall.NextDue) : spaced.Due);
        }
    }

    /// <summary>Whether the next flood of the schedule is left out.</summary>
    public bool SkipsNext => skipsNext;

    /// <summary>A flood begins, of whatever origin.</summary>
    public void Began(in Moment now)
    {
        spaced.Began(now.Monotonic);
        if (wall.IsOwed || spaced.IsOwed)
        {
            if (now.WallTrusted)
            {
                wall.StandFor(now.Wall);
            }
            else
            {
                lastSpaced = now.Monotonic;
            }
        }

        Settle();
    }

    /// <summary>What was called for needs no flood of its own any more.</summary>
    public void Settle()
    {
        Version++;
        wall.Settle();
        spaced.Settle();
    }

    /// <summary>Leaves out the next flood; asked again, still only that one.</summary>
    public bool TrySkipNext(ScheduleClock clock, in Moment now, out string answer)
    {
        if (calendar.IsEmpty)
        {
            answer = "the schedule has no floods to leave out";
            return false;
        }

        skipsNext = true;
        Version++;
        answer = clock.IsTrusted
            ? $"the flood at {zone.SayTime(wall.NextRun, clock.TimeAt(now.Monotonic))} will be left out"
            : "the next flood will be left out";
        return true;
    }

    /// <summary>When the next flood will run by the schedule's time; the maximum instant when none will.</summary>
    public Instant NextFlood(ScheduleClock clock) => calendar.IsEmpty ? Instant.MaxValue
        : clock.IsTrusted ? (skipsNext ? wall.RunAfterNext : wall.NextRun)
        : clock.TimeAt(spaced.Due + (skipsNext ? spaced.Spacing : Duration.Zero));

    public void Save(MemoryWriter writer)
    {
        wall.Save(writer);
        spaced.Save(writer);
        if (skipsNext)
        {
            writer.Put($"{key}/skip-next", 1);
        }
    }

    private FloodCall ByWall(ScheduleClock clock, in Moment now)
    {
        Version += wall.NoteStep(now.Wall, clock.Step) ? 1 : 0;
        if (!wasTrusted)
        {
            wall.TrustArrives(now.Wall, lastSpaced is { } began ? clock.TimeAt(began) : null);
            lastSpaced = null;
            Version++;
        }

        return wall.TakeDue(now.Wall, ref skipsNext);
    }

    private FloodCall BySpacing(in Moment now)
    {
        if (!spaced.TakeDue(now.Monotonic))
        {
            return default;
        }

        if (skipsNext)
        {
            skipsNext = false;
            spaced.Settle();
            return FloodCall.LeaveOut("a person asked to leave out the next flood");
        }

        return FloodCall.Run(
            $"the time is not known for sure, and {spaced.Spacing.InWords()} have passed since the last flood");
    }
}
