using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Draws everything about a case that is left to chance. What is drawn hangs on the seed and the case's name alone, so a
/// shard, a sample or a single case draws what the whole campaign would.</summary>
internal sealed class CaseDrawing(Site site, FaultFreeDays days, ulong seed)
{
    private const double ShortestApartS = 0.1;
    private const double LongestApartS = 10_800;
    private static readonly Duration leadBeyondRest = Duration.FromMinutes(15);
    private readonly Duration lead = site.Racks.Max(rack => rack.Limits.PumpRest) + leadBeyondRest;

    /// <summary>Draws a case; null where no rack of the place is ever in the phase.</summary>
    /// <param name="phase">When the first fault strikes.</param>
    /// <param name="first">The first fault.</param>
    /// <param name="second">The second; null for a single.</param>
    public CampaignCase? Draw(CasePhase phase, FaultInstance first, FaultInstance? second)
    {
        var name = $"{first.Name}{(second is null ? "" : $" + {second.Name}")}, {phase.Words()}";
        var chance = SplitMix64.Of(seed, name);
        var rack = first.Target.RackOf(site) ?? second?.Target.RackOf(site);
        var windows = days.Windows.Where(window => window.Phase == phase && (rack is null || window.Rack == rack)).ToList();
        if (windows.Count == 0)
        {
            return null;
        }

        var window = windows[chance.Below(windows.Count)];
        var strikes = window.From + Rounded((window.Until - window.From).TotalSeconds * chance.Share());
        var start = FloorToMinute(strikes - lead);
        var breakers = chance.Below(2) == 0 ? BreakerEdge.Fast : BreakerEdge.Slow;
        var one = Fault(first, start, strikes - start, chance);
        if (second is null)
        {
            return new CampaignCase(name, phase, start, [one], breakers);
        }

        // Either of the two may be the one that strikes in the phase; the other follows within hours, most often within minutes.
        var follows = strikes - start + Rounded(chance.BetweenByDoublings(ShortestApartS, LongestApartS));
        return chance.Below(2) == 0
            ? new CampaignCase(name, phase, start, [one, Fault(second, start, follows, chance)], breakers)
            : new CampaignCase(name, phase, start, [Fault(second, start, strikes - start, chance), one with { At = follows }], breakers);
    }

    private static DrawnFault Fault(FaultInstance instance, Instant start, Duration at, SplitMix64 chance)
    {
        var mode = instance.Mode;
        var lasts = mode.LongestLasts == Duration.Zero
            ? Duration.Zero
            : Rounded(chance.BetweenByDoublings(mode.ShortestLasts.TotalSeconds, mode.LongestLasts.TotalSeconds));
        var size = mode.Sizes is { } sizes ? ThreeDigits(chance.BetweenByDoublings(sizes.Least, sizes.Most)) : 0;
        return new DrawnFault(instance, start, at, lasts, size);
    }

    private static Duration Rounded(double seconds) => Duration.FromMilliseconds(Math.Round(seconds * 1000));

    // A scenario's start is written to the minute.
    private static Instant FloorToMinute(Instant time) => Instant.FromUnixTimeSeconds(time.ToUnixTimeSeconds() / 60 * 60);

    // As a scenario writes it, so that it reads the same number back.
    private static double ThreeDigits(double size)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(size)) - 2);
        return double.Parse($"{Math.Round(size / step) * step:G3}", System.Globalization.CultureInfo.InvariantCulture);
    }
}
