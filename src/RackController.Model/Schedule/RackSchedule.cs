using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>What should happen on one rack and when, in local time. It is a wish; interlocks and the circuit decide.</summary>
public sealed record RackSchedule
{
    /// <summary>The lights, by tier, bottom first; null for a tier without one.</summary>
    public required ImmutableArray<Photoperiod?> Lights { get; init; }

    /// <summary>When and how the trays are flooded.</summary>
    public required FloodPlan Floods { get; init; }

    /// <summary>How fans and the aerator run, one plan for each.</summary>
    public required ImmutableArray<RunPlan> Runs { get; init; }

    /// <summary>How much later each tier's light comes on than the one below it. Default none; up to 1 h.</summary>
    public Duration LightStagger { get; init; }
}

/// <summary>When a tier is lit, every day.</summary>
/// <param name="Start">Local time the light comes on. A start that the clock skips happens at the first moment after the
/// gap; one that comes twice happens the first time.</param>
/// <param name="Length">How long it stays on, in elapsed time: a change of the clock neither shortens nor lengthens it.
/// From 0 to 24 h; 24 h is always lit.</param>
public sealed record Photoperiod(LocalTime Start, Duration Length);

/// <summary>When and how the trays of a rack are flooded. The pump runs through fill and soak, then the trays drain.</summary>
/// <param name="Times">When floods begin.</param>
/// <param name="Fill">When a fill is over.</param>
/// <param name="Soak">How long the water is held at depth after the fill, with the pump running against the standpipes:
/// 0 to 4 h.</param>
/// <param name="Drain">How long the trays take to empty: the next flood waits for it. Default 20 min; 0 to 24 h.</param>
/// <param name="Missed">What happens to floods that could not begin while the power or the controller was away.
/// Default: one is run.</param>
public sealed record FloodPlan(FloodTimes Times, FillRule Fill, Duration Soak, Duration Drain, MissedFloods Missed)
{
    /// <summary>The longest that one flood can take from pump on to empty trays.</summary>
    public Duration LongestCycle => Fill.Limit + Soak + Drain;
}

/// <summary>When the floods of a day begin.</summary>
public abstract record FloodTimes;

/// <summary>No floods: a rack at rest.</summary>
public sealed record NoFloods : FloodTimes;

/// <summary>At these local times.</summary>
/// <param name="Times">In order, each once: 1 to 96.</param>
public sealed record FloodsAt(ImmutableArray<LocalTime> Times) : FloodTimes;

/// <summary>Every so often within a window of the day, in elapsed time from the window's start.</summary>
/// <param name="Interval">From the start of one flood to the start of the next: 1 min to 24 h.</param>
/// <param name="Start">Local time of the window's start and of its first flood.</param>
/// <param name="Length">Length of the window: 1 min to 24 h; no flood begins at or after its end.</param>
public sealed record FloodsEvery(Duration Interval, LocalTime Start, Duration Length) : FloodTimes
{
    /// <summary>How many floods one window holds.</summary>
    public int Count => (int)Math.Ceiling(Length / Interval);
}

/// <summary>A number of floods spread evenly over the time from the first light on to the last light off, the first one
/// at lights on.</summary>
/// <param name="Count">Floods a day: 1 to 96.</param>
public sealed record FloodsOverPhotoperiod(int Count) : FloodTimes;

/// <summary>When a fill is over.</summary>
/// <param name="Limit">How long a fill may take: 5 s to 2 h. For a fill by time this is the fill.</param>
public abstract record FillRule(Duration Limit);

/// <summary>The fill is over when its time is.</summary>
/// <param name="Limit">How long to fill.</param>
public sealed record FillForTime(Duration Limit) : FillRule(Limit);

/// <summary>The fill is over when every tray in use that has a full float or a level reads full; when the limit passes
/// first, the flood goes on and an alarm tells of it.</summary>
/// <param name="Limit">How long to wait for that.</param>
/// <param name="FullDepthMm">Depth that a tray level must reach, mm; floats know their own height. Default 5 mm below the
/// lowest standpipe.</param>
public sealed record FillUntilFull(Duration Limit, double FullDepthMm) : FillRule(Limit);

/// <summary>What happens to floods that were missed.</summary>
public enum MissedFloods
{
    /// <summary>One flood makes up for all that were missed.</summary>
    RunOne,

    /// <summary>They are let go; the next one comes when it is due.</summary>
    Skip,
}
