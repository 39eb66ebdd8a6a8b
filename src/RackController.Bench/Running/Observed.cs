using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What is true at the moment that a run has reached; filled again at every scan.</summary>
internal sealed class Observed(Site site, SimulatedSite plant, LoadLedger loads, EventLog log) : IObserved
{
    private static readonly Duration StartingTime = Duration.FromSeconds(1);
    private readonly ImmutableArray<ImmutableArray<Load>> loadsOfCircuit =
        [.. site.Circuits.Select(circuit => site.Loads.Where(load => load.Circuit == circuit.Id).ToImmutableArray())];

    private readonly Dictionary<string, AlarmState> alarms = new(StringComparer.Ordinal);
    private RackControl? control;

    public Site Site { get; } = site;

    public Instant At { get; private set; }

    public Duration Elapsed { get; private set; }

    public Duration SinceBefore { get; private set; }

    /// <summary>The earliest moment that somebody asked to be shown next.</summary>
    public Duration LookNextBy { get; private set; }

    public void LookAgainBy(Duration elapsed) => LookNextBy = Duration.Min(LookNextBy, elapsed);

    public bool ControllerRuns => control is not null;

    public ReadOnlySpan<ControlEvent> Events => log.Fresh;

    public ImmutableArray<string> Happened { get; private set; } = [];

    public DayTotals? DayClosed { get; set; }

    /// <summary>Moves on to a moment.</summary>
    public void MoveTo(VirtualClock clock, RackControl? running, ImmutableArray<string> happened)
    {
        SinceBefore = clock.Elapsed - Elapsed;
        Elapsed = clock.Elapsed;
        At = clock.True;
        Happened = happened;
        DayClosed = null;
        LookNextBy = Duration.MaxValue;
        var isSame = ReferenceEquals(running, control);
        control = running;
        if (!isSame || AnyAlarmMoved())
        {
            TakeAlarms();
        }
    }

    public bool IsTold(LoadId load) => plant.Loads[load.Index].Commanded;

    public bool IsPowered(LoadId load) => plant.Loads[load.Index].Powered;

    public FloodPhase Flood(RackId rack) => control?.FloodPhase(rack) ?? FloodPhase.Idle;

    public AlarmState Alarm(string key) => key == AlarmIs.Any
        ? alarms.Values.FirstOrDefault(state => state != AlarmState.SuppressedByDesign, AlarmState.Normal)
        : alarms.GetValueOrDefault(key, AlarmState.Normal);

    public double TrayDepthMm(RackId rack, int tierNumber) => plant.Racks[rack.Index].Tiers[tierNumber - 1].DepthMm;

    public double SpilledL(RackId rack) => plant.Racks[rack.Index].OntoFloorL;

    public double ReservoirL(RackId rack) => plant.Racks[rack.Index].ReservoirVolumeL;

    public double CircuitA(CircuitId circuit)
    {
        if (loads.LastCameOn is not { } cameOn || Elapsed - cameOn >= StartingTime)
        {
            return plant.Circuits[circuit.Index].CurrentA;
        }

        var nameplateA = 0.0;
        var isStarting = false;
        foreach (var load in loadsOfCircuit[circuit.Index])
        {
            if (IsPowered(load.Id))
            {
                nameplateA += load.CurrentA(Site[circuit].VoltageV);
                isStarting |= IsStarting(load.Id);
            }
        }

        return isStarting ? nameplateA : plant.Circuits[circuit.Index].CurrentA;
    }

    private bool IsStarting(LoadId load)
    {
        var left = StartingTime - loads.Unbroken(load);
        if (left <= Duration.Zero)
        {
            return false;
        }

        LookAgainBy(Elapsed + left);
        return true;
    }

    public double AirC(RackId rack, int tierNumber) => plant.Racks[rack.Index].Tiers[tierNumber - 1].AirTemperatureC;

    public double Value(RackId rack, RackQuantity quantity, int? tierNumber) => plant.Racks[rack.Index].Value(quantity, tierNumber);

    public Duration PoweredFor(LoadId load) => loads.Unbroken(load);

    // An alarm changes only together with its event, so that otherwise the list need not be asked for again.
    private bool AnyAlarmMoved()
    {
        foreach (var happened in log.Fresh)
        {
            if (happened.Kind == EventKind.Alarm)
            {
                return true;
            }
        }

        return false;
    }

    private void TakeAlarms()
    {
        alarms.Clear();
        foreach (var alarm in control?.Alarms() ?? [])
        {
            alarms[alarm.Key] = alarm.State;
        }
    }
}
