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
    private readonly Dictionary<string, AlarmState> alarms = new(StringComparer.Ordinal);
    private RackControl? control;

    public Site Site { get; } = site;

    public Instant At { get; private set; }

    public Duration Elapsed { get; private set; }

    public Duration SinceBefore { get; private set; }

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
        var isSame = ReferenceEquals(running, control);
        control = running;
        if (!isSame || log.Fresh.Length > 0)
        {
            TakeAlarms();
        }
    }

    public bool IsTold(LoadId load) => plant.Loads[load.Index].Commanded;

    public bool IsPowered(LoadId load) => plant.Loads[load.Index].Powered;

    public FloodPhase Flood(RackId rack) => control?.FloodPhase(rack) ?? FloodPhase.Idle;

    public AlarmState Alarm(string key) => alarms.GetValueOrDefault(key, AlarmState.Normal);

    public double TrayDepthMm(RackId rack, int tierNumber) => plant.Racks[rack.Index].Tiers[tierNumber - 1].DepthMm;

    public double SpilledL(RackId rack) => plant.Racks[rack.Index].SpilledL;

    public double ReservoirL(RackId rack) => plant.Racks[rack.Index].ReservoirVolumeL;

    public double CircuitA(CircuitId circuit)
    {
        var nameplateA = 0.0;
        var isStarting = false;
        foreach (var load in Site.Loads)
        {
            if (load.Circuit == circuit && IsPowered(load.Id))
            {
                nameplateA += load.CurrentA(Site[circuit].VoltageV);
                isStarting |= loads.Unbroken(load.Id) < StartingTime;
            }
        }

        return isStarting ? nameplateA : plant.Circuits[circuit.Index].CurrentA;
    }

    public double AirC(RackId rack, int tierNumber) => plant.Racks[rack.Index].Tiers[tierNumber - 1].AirTemperatureC;

    public double Value(RackId rack, RackQuantity quantity, int? tierNumber) => plant.Racks[rack.Index].Value(quantity, tierNumber);

    public Duration PoweredFor(LoadId load) => loads.Unbroken(load);

    // Alarms change only together with an event, so between events the list need not be asked for again.
    private void TakeAlarms()
    {
        alarms.Clear();
        foreach (var alarm in control?.Alarms() ?? [])
        {
            alarms[alarm.Key] = alarm.State;
        }
    }
}
