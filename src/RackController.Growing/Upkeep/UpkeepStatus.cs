using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>What a work of upkeep is counted in.</summary>
public enum UpkeepUnit
{
    /// <summary>Floods of the rack.</summary>
    Floods,

    /// <summary>Local days.</summary>
    Days,

    /// <summary>Hours that the pump ran.</summary>
    PumpHours,
}

/// <summary>One count that can make a work due.</summary>
/// <param name="Unit">What is counted.</param>
/// <param name="Count">How many so far, from 0.</param>
/// <param name="Limit">With how many it is due, above 0.</param>
public sealed record UpkeepCount(UpkeepUnit Unit, double Count, double Limit)
{
    /// <summary>How much of the interval is over: 1 when it is due, and more the longer it waits.</summary>
    public double Share => Count / Limit;
}

/// <summary>Where one work of upkeep stands on one rack. Pure arithmetic over how much the rack was used; it knows of no journal.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Work">The work.</param>
/// <param name="Every">How long it may wait.</param>
/// <param name="Use">How much the rack was used since.</param>
/// <param name="Counts">Every count that can make it due, the one that is nearest to it first; at least one.</param>
public sealed record UpkeepStatus(
    Rack Rack, UpkeepWork Work, UpkeepInterval Every, UpkeepUse Use, ImmutableArray<UpkeepCount> Counts)
{
    /// <summary>From this share of its interval on a work is overdue and an alarm calls for it; what is merely due waits in the list for
    /// whoever comes by (common practice, no source).</summary>
    public const double OverdueFrom = 1.25;

    /// <summary>The count that is nearest to its limit, or furthest beyond.</summary>
    public UpkeepCount First => Counts[0];

    /// <summary>Whether it is time to do it.</summary>
    public bool IsDue => First.Share >= 1;

    /// <summary>Whether it has waited for so long that somebody must be called.</summary>
    public bool IsOverdue => First.Share >= OverdueFrom;

    /// <summary>Judges a work.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="work">The work.</param>
    /// <param name="every">How long it may wait.</param>
    /// <param name="use">How much the rack was used since it was done.</param>
    /// <param name="now">The time.</param>
    /// <param name="zone">Whose days count.</param>
    public static UpkeepStatus Of(Rack rack, UpkeepWork work, UpkeepInterval every, UpkeepUse use, Instant now, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(every);
        ArgumentNullException.ThrowIfNull(use);
        var counts = ImmutableArray.CreateBuilder<UpkeepCount>();
        if (every.Floods is { } floods)
        {
            counts.Add(new UpkeepCount(UpkeepUnit.Floods, use.Floods, floods));
        }

        if (every.Days is { } days)
        {
            // A wall clock that was set back makes nothing undone.
            var gone = Period.DaysBetween(use.Since.InZone(zone).Date, now.InZone(zone).Date);
            counts.Add(new UpkeepCount(UpkeepUnit.Days, Math.Max(0, gone), days));
        }

        if (every.PumpOn is { } pumpOn)
        {
            counts.Add(new UpkeepCount(UpkeepUnit.PumpHours, use.PumpOn.TotalHours, pumpOn.TotalHours));
        }

        Invariant.Holds(counts.Count > 0, "an interval of upkeep counts something");
        return new UpkeepStatus(rack, work, every, use, [.. counts.OrderByDescending(count => count.Share)]);
    }

    /// <summary>When it will be due if the rack is used on as it was since; null where it is due already, and where nothing has been
    /// counted yet that would make it due within ten years.</summary>
    /// <param name="now">The time.</param>
    public Instant? ExpectedAt(Instant now)
    {
        var goneDays = (now - Use.Since).TotalDays;
        return IsDue || goneDays <= 0 ? null
            : Counts.Where(count => count.Count > 0)
                .Select(count => goneDays * (count.Limit - count.Count) / count.Count)
                .Where(days => days <= UpkeepInterval.MostDays)
                .Select(days => (Instant?)(now + Duration.FromDays(days)))
                .Min();
    }
}
