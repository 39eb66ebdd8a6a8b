using NodaTime;

namespace RackController.Bench;

/// <summary>What no run may show, whatever fails.</summary>
public enum HazardKind
{
    /// <summary>Water on the floor.</summary>
    WaterOnTheFloor,

    /// <summary>The pump runs dry past its limit.</summary>
    PumpRunsDry,

    /// <summary>The pump runs past its maximum run.</summary>
    PumpPastItsMaximumRun,

    /// <summary>A circuit carries more than its limit, past the breaker's own time.</summary>
    CircuitOverloaded,

    /// <summary>Lights on above the temperature limit.</summary>
    LightsInTheHeat,
}

/// <summary>A hazard that showed.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Where">Where: a rack, load, tier or circuit.</param>
/// <param name="At">The true time at which it first showed.</param>
/// <param name="Elapsed">The same, since the run began.</param>
/// <param name="Seen">What was seen, with its numbers.</param>
/// <param name="Causes">What led there, earliest first.</param>
public sealed record Hazard(
    HazardKind Kind, string Where, Instant At, Duration Elapsed, string Seen,
    System.Collections.Immutable.ImmutableArray<LogEntry> Causes);
