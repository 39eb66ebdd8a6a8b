using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// A person by script, who comes once the faults are repaired and does what the alarms say: acknowledges, closes breakers, mops,
/// refills, does the proof tests that are asked for, and
/// resets what has latched. They see alarms and whatever an alarm sends them to; what no alarm tells, nobody mends.
/// </summary>
internal sealed class Attendant(Site site, Duration repairedAt) : IVisitor
{
    private const string Name = "grower";
    private static readonly Duration onTheWay = Duration.FromMinutes(15);
    private static readonly Duration whileSomethingStands = Duration.FromMinutes(10);
    private static readonly Duration otherwise = Duration.FromHours(1);
    private static readonly Duration inATest = Duration.FromSeconds(1);
    private readonly ProofTester tester = new(site, Name);
    private readonly List<ScenarioEvent> deeds = [];

    /// <inheritdoc/>
    public MonotonicTime ComesAt { get; private set; } = MonotonicTime.Zero + repairedAt + onTheWay;

    /// <summary>Everything they did, in order.</summary>
    public IReadOnlyList<ScenarioEvent> Deeds => deeds;

    /// <summary>When they last did anything, since the run began; zero while they have not.</summary>
    public Duration LastDeedAt => deeds.Count > 0 ? deeds[^1].At : Duration.Zero;

    /// <inheritdoc/>
    public IReadOnlyList<ScenarioEvent> Visit(VirtualRun run)
    {
        var before = deeds.Count;
        if (tester.IsBusy)
        {
            deeds.AddRange(tester.Act(run));
            ComesAt = MonotonicTime.Zero + run.Now.Elapsed + inATest;
            return deeds[before..];
        }

        var alarms = Standing(run);
        foreach (var alarm in alarms)
        {
            Answer(alarm, run);
        }

        var isContent = alarms.IsEmpty && run.Control is not null;
        ComesAt = MonotonicTime.Zero + run.Now.Elapsed
            + (tester.IsBusy ? inATest : isContent ? otherwise : whileSomethingStands);
        return deeds[before..];
    }

    /// <summary>The alarms that a person sees: not those that mean nothing in the rack's present state.</summary>
    public static ImmutableArray<Alarm> Standing(VirtualRun run) =>
        [.. (run.Control?.Alarms() ?? []).Where(alarm => alarm.State != AlarmState.SuppressedByDesign)];

    private void Answer(Alarm alarm, VirtualRun run)
    {
        if (alarm.State is AlarmState.Unacknowledged or AlarmState.ReturnedUnacknowledged)
        {
            Ask(new Acknowledge(Name, alarm.Key), run);
        }

        var (place, row) = (alarm.Key[..alarm.Key.LastIndexOf('/')], alarm.Key[(alarm.Key.LastIndexOf('/') + 1)..]);
        foreach (var rack in site.Racks.Where(rack => place == rack.Name || place.StartsWith(rack.Name + "/", StringComparison.Ordinal)))
        {
            LookAt(rack, run);
            if (row is "floats-contradict" or "float-stuck" && alarm.State != AlarmState.Latched)
            {
                tester.Take(FloatsOf(rack));
            }
        }

        if (row is "proof-test-failed" or "proof-test-overdue")
        {
            tester.Take(run.Control!.ProofTests().Where(test => test.HasFailed || test.IsOverdue).Select(test => test.Item));
        }

        // Whom a tier without light sends to the breaker looks at the one that it hangs on.
        var lamps = site.Loads.Where(load => row == "light-missing" && load.Kind == LoadKind.Light && load.Name == place + " light");
        foreach (var circuit in site.Circuits.Where(circuit => circuit.Name == place || lamps.Any(lamp => lamp.Circuit == circuit.Id)))
        {
            LookAt(circuit, run);
        }

        // How much is missing shows once the trays have drained; who resets before that comes back for the same.
        var waits = row == "low-float" && !site.Racks.Where(rack => place == rack.Name).All(rack => IsAtRest(rack, run));
        if (!waits && alarm.State is (AlarmState.Latched or AlarmState.Acknowledged))
        {
            Ask(new ResetLatch(Name, alarm.Key), run);
            Ask(new ConfirmReset(Name, alarm.Key), run);
        }
    }

    // Whoever was sent to a rack sees a wet floor, a wired float that has opened, and an empty reservoir.
    private void LookAt(Rack rack, VirtualRun run)
    {
        var truth = run.Plant.Racks[rack.Id.Index];
        var place = new FaultTarget(rack.Name) { Rack = rack.Id };
        if (truth.OnFloorL + truth.DripTrayL > 0)
        {
            Do(FaultKind.FloorMopped, place, 0, run);
        }
        else if (truth.IsFloatCutoutOpen)
        {
            Do(FaultKind.FloatCutoutReset, place, 0, run);
        }

        var missingL = Math.Floor(rack.Reservoir.NormalVolumeL - truth.ReservoirVolumeL);
        if (IsAtRest(rack, run) && missingL > RefilledFromShare * rack.Reservoir.NormalVolumeL)
        {
            Do(FaultKind.ReservoirRefilled, place, missingL, run);
        }
    }

    private static bool IsAtRest(Rack rack, VirtualRun run) =>
        run.Plant.Racks[rack.Id.Index].Tiers.All(tier => tier.DepthMm < FloodTray.DrainedBelowMm) && !run.Now.IsPowered(rack.Pump.Load);

    private IEnumerable<string> FloatsOf(Rack rack) =>
        site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind.IsFloat()).Select(sensor => sensor.Name);

    private const double RefilledFromShare = 0.05;

    private void LookAt(Circuit circuit, VirtualRun run)
    {
        if (run.Plant.Circuits[circuit.Id.Index].Breaker != BreakerState.Closed)
        {
            Do(FaultKind.BreakerClosed, new FaultTarget(circuit.Name) { Circuit = circuit.Id }, 0, run);
        }
    }

    private void Ask(OperatorRequest request, VirtualRun run) =>
        deeds.Add(new PersonAsks(run.Now.Elapsed, $"{Name} {deeds.Count + 1}", request));

    private void Do(FaultKind kind, FaultTarget target, double size, VirtualRun run)
    {
        var fault = target.Fault(kind, run.Plant.Reached, MonotonicTime.Never, size);
        run.Plant.Inject(fault);
        deeds.Add(new RackFails(run.Plant.Reached - MonotonicTime.Zero, $"{Name} {deeds.Count + 1}", fault));
    }
}
