using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// What is true at one moment of a run: what the controller says and what the simulated rack really does. Judges see
/// this and nothing else; they can change nothing, but they may ask to be shown a later moment.
/// </summary>
public interface IObserved
{
    /// <summary>The site.</summary>
    Site Site { get; }

    /// <summary>The true time, whatever the controller's wall clock says.</summary>
    Instant At { get; }

    /// <summary>Time since the run began.</summary>
    Duration Elapsed { get; }

    /// <summary>Time since the observation before; zero at the first.</summary>
    Duration SinceBefore { get; }

    /// <summary>Asks to be shown the first scan at or after a moment, although nothing may change there: how long something lasts
    /// is told by time alone. Asked anew at every observation.</summary>
    /// <param name="elapsed">Time since the run began.</param>
    void LookAgainBy(Duration elapsed);

    /// <summary>Whether the controller is running.</summary>
    bool ControllerRuns { get; }

    /// <summary>Events since the observation before, in order.</summary>
    ReadOnlySpan<ControlEvent> Events { get; }

    /// <summary>Names of the scenario's own events that came about since the observation before.</summary>
    ImmutableArray<string> Happened { get; }

    /// <summary>The local day that ended since the observation before, if it was observed from its beginning.</summary>
    DayTotals? DayClosed { get; }

    /// <summary>Whether a load is told to be on, by the controller or, while it is away, by the relay at rest.</summary>
    /// <param name="load">The load.</param>
    bool IsTold(LoadId load);

    /// <summary>Whether a load really draws power.</summary>
    /// <param name="load">The load.</param>
    bool IsPowered(LoadId load);

    /// <summary>Where a rack's flood cycle is; idle while the controller is away.</summary>
    /// <param name="rack">The rack.</param>
    FloodPhase Flood(RackId rack);

    /// <summary>The state of an alarm; normal for one that is not listed.</summary>
    /// <param name="key">The key of the alarm; <see cref="AlarmIs.Any"/> for the first that means anything.</param>
    AlarmState Alarm(string key);

    /// <summary>Depth of water in a flood tray, mm.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom.</param>
    double TrayDepthMm(RackId rack, int tierNumber);

    /// <summary>Water that a rack has lost onto the floor since the run began, litres.</summary>
    /// <param name="rack">The rack.</param>
    double SpilledL(RackId rack);

    /// <summary>Water in the reservoir, litres.</summary>
    /// <param name="rack">The rack.</param>
    double ReservoirL(RackId rack);

    /// <summary>Current that a circuit carries, A. For a second after a load comes on it is the sum of the nameplates, because
    /// starting currents are for the breaker to judge and not for a limit that is meant for hours.</summary>
    /// <param name="circuit">The circuit.</param>
    double CircuitA(CircuitId circuit);

    /// <summary>Air temperature at a tier, degrees Celsius.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom.</param>
    double AirC(RackId rack, int tierNumber);

    /// <summary>The true value of a quantity of the simulated rack, in its unit.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="quantity">Which quantity.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom; null for the whole rack.</param>
    double Value(RackId rack, RackQuantity quantity, int? tierNumber);

    /// <summary>How long a load has really been powered without a break; zero while it is not.</summary>
    /// <param name="load">The load.</param>
    Duration PoweredFor(LoadId load);
}

/// <summary>What one whole local day came to.</summary>
/// <param name="Date">The local date.</param>
/// <param name="Length">Its length, which is not 24 h when the clocks change.</param>
/// <param name="FloodsByRack">Floods begun, by rack.</param>
/// <param name="PoweredByLoad">How long each load was powered, by load.</param>
public sealed record DayTotals(
    LocalDate Date, Duration Length, ImmutableArray<int> FloodsByRack, ImmutableArray<Duration> PoweredByLoad);
