using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Tells when a site is well again after something failed: the controller runs, every tray that is owed a flood had one that
/// began since and is over, and no alarm is left for anybody to answer.</summary>
/// <param name="site">The site.</param>
/// <param name="given">What its crops got so far.</param>
/// <param name="isOwed">Whether the tray of a tier is flooded when nothing fails.</param>
internal sealed class Recovery(Site site, CropDuties given, Func<Rack, Tier, bool> isOwed)
{
    /// <summary>What is told of it, in words.</summary>
    public const string Words = "every tray was flooded anew and has drained, and no alarm stands";

    /// <summary>Whether it is well now.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="since">When the last that failed was put right.</param>
    public bool IsWell(IObserved now, Instant since) =>
        now.ControllerRuns && now.Alarm(AlarmIs.Any) == AlarmState.Normal && site.Racks.All(rack => HasFlooded(rack, now, since));

    /// <summary>What is missing, in words.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="since">When the last that failed was put right.</param>
    /// <param name="standing">The keys of the alarms that stand.</param>
    public string Missing(IObserved now, Instant since, ImmutableArray<string> standing)
    {
        var dry = string.Join(", ", site.Racks.Where(rack => !HasFlooded(rack, now, since)).Select(rack => rack.Name));
        string[] missing =
        [
            dry.Length > 0 ? $"{dry} did not flood again" : "",
            now.ControllerRuns ? "" : "the controller is away",
            standing.IsEmpty ? "" : $"{string.Join(", ", standing)} {(standing.Length == 1 ? "stands" : "stand")}",
        ];
        var words = string.Join("; ", missing.Where(words => words.Length > 0));
        return words.Length > 0 ? words : "it was well only then";
    }

    private bool HasFlooded(Rack rack, IObserved now, Instant since)
    {
        var owed = rack.Tiers.Where(tier => isOwed(rack, tier)).ToList();
        return owed.Count == 0
            || (IsSince(given.FillsBegun(rack.Id), since)
                && now.Flood(rack.Id) is FloodPhase.Idle
                && owed.All(tier => IsSince(given.Wetted(rack.Id, tier.Number - 1), since)));
    }

    private static bool IsSince(IReadOnlyList<Instant> times, Instant since) => times.Count > 0 && times[^1] >= since;
}
