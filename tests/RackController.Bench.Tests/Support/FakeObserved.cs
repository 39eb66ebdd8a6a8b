using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Support;

/// <summary>A moment of a run that a test sets as it likes.</summary>
public sealed class FakeObserved : IObserved
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 12, 0);
    private ControlEvent[] events = [];

    public Site Site { get; init; } = Sites.OneRack();

    public Instant At => Start + Elapsed;

    public Duration Elapsed { get; private set; }

    public Duration SinceBefore { get; private set; }

    public bool ControllerRuns { get; set; } = true;

    public ReadOnlySpan<ControlEvent> Events => events;

    public ImmutableArray<string> Happened { get; set; } = [];

    public DayTotals? DayClosed { get; set; }

    public HashSet<LoadId> Told { get; } = [];

    public HashSet<LoadId> Powered { get; } = [];

    public FloodPhase Phase { get; set; }

    public Dictionary<string, AlarmState> Alarms { get; } = [];

    public double DepthMm { get; set; }

    public double Spill { get; set; }

    public double Reservoir { get; set; } = 140;

    public double Current { get; set; }

    public double Air { get; set; } = 20;

    public Dictionary<RackQuantity, double> Quantities { get; } = [];

    public Duration Unbroken { get; set; }

    public Duration AskedToLookBy { get; private set; } = Duration.MaxValue;

    public void LookAgainBy(Duration elapsed) => AskedToLookBy = Duration.Min(AskedToLookBy, elapsed);

    public LoadId Pump => Site.Racks[0].Pump.Load;

    public void Report(string subject, string what) =>
        events = [new ControlEvent(new Moment(MonotonicTime.Zero, At, true), EventKind.Interlock, subject, what, "a test says so")];

    public FakeObserved After(double seconds)
    {
        SinceBefore = Duration.FromSeconds(seconds);
        Elapsed += SinceBefore;
        events = [];
        Happened = [];
        DayClosed = null;
        AskedToLookBy = Duration.MaxValue;
        return this;
    }

    public bool IsTold(LoadId load) => Told.Contains(load);

    public bool IsPowered(LoadId load) => Powered.Contains(load);

    public FloodPhase Flood(RackId rack) => Phase;

    public AlarmState Alarm(string key) => Alarms.GetValueOrDefault(key, AlarmState.Normal);

    public double TrayDepthMm(RackId rack, int tierNumber) => DepthMm;

    public double SpilledL(RackId rack) => Spill;

    public double ReservoirL(RackId rack) => Reservoir;

    public double CircuitA(CircuitId circuit) => Current;

    public double AirC(RackId rack, int tierNumber) => Air;

    public double Value(RackId rack, RackQuantity quantity, int? tierNumber) => Quantities[quantity];

    public Duration PoweredFor(LoadId load) => Unbroken;
}
