using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// A person by script who does proof tests one after the other, as the controller asks for them: moves floats, wets ropes, opens
/// breakers, asks for floods, and says what is to be seen of a load. What the readings show is no business of theirs.
/// </summary>
/// <param name="site">The site.</param>
/// <param name="name">Who does it, for the record.</param>
internal sealed class ProofTester(Site site, string name)
{
    // Longer than the controller wants to see it, so that the step of a float that is well is over by then.
    private static readonly Duration handStays = Duration.FromSeconds(8);
    private readonly Queue<string> items = new();
    private static readonly Duration aMoment = Duration.FromSeconds(2);

    // How long a person waits in each step of a wired float's test: for the fill to be seen, and for the hand to let go.
    private static readonly Duration[] waitsInStep = [Duration.FromSeconds(30), aMoment, handStays + aMoment, Duration.Zero];

    // As far as a person turns down a time relay to see it open.
    private static readonly Duration turnedDownTo = Duration.FromSeconds(40);
    private Duration? lookAt;
    private bool isPressed;
    private string? testing;
    private int done;

    /// <summary>Whether there is something left to test.</summary>
    public bool IsBusy => testing is not null || items.Count > 0;

    /// <summary>Has sensors or loads tested, those that wait already excepted.</summary>
    public void Take(IEnumerable<string> names)
    {
        foreach (var item in names.Except(items).Where(item => item != testing).ToList())
        {
            items.Enqueue(item);
        }
    }

    /// <summary>Does what there is to do now; to be asked again a moment later while <see cref="IsBusy"/>.</summary>
    /// <param name="run">The run; a fault among what is done is injected already.</param>
    public IEnumerable<ScenarioEvent> Act(VirtualRun run)
    {
        if (run.Control?.ProofTestUnderWay() is { } test)
        {
            return done == test.Step ? [] : Step(test, run);
        }

        (testing, done, lookAt, isPressed) = (items.TryDequeue(out var next) ? next : null, 0, null, false);
        return next is null ? [] : [Ask(new BeginProofTest(name, next), run)];
    }

    private IEnumerable<ScenarioEvent> Step(ProofTestProgress test, VirtualRun run)
    {
        if (site.Sensors.FirstOrDefault(sensor => sensor.Name == test.Item) is { IsContact: true } contact)
        {
            done = test.Step;
            return Move(contact, test.Step, run);
        }

        if (site.Racks.FirstOrDefault(rack => IsWiredFloatOf(rack, test)) is { } wired && test is { AsksPerson: true, WaitsForRack: false })
        {
            return [.. OfWiredFloat(wired, test.Step, run)];
        }

        if (site.Racks.FirstOrDefault(rack => IsTimeRelayOf(rack, test)) is { } timed && (test.Step == 3 || !test.WaitsForRack))
        {
            return [.. OfTimeRelay(timed, test, run)];
        }

        var load = site.Loads.FirstOrDefault(load => load.Name == test.Item);
        if (test.AsksPerson && !test.WaitsForRack)
        {
            done = test.Step;
            var runs = run.Plant.Loads[load!.Id.Index].CurrentA > 0;
            return [Ask(new AnswerProofTest(name, runs == (test.Step == 2)), run)];
        }

        return test.WaitsForRack && AsksForFlood(test) && PumpOf(test, load) is { } rack && run.Now.Flood(rack) == FloodPhase.Idle
            ? [Ask(new FloodNow(name, rack), run)]
            : [];
    }

    // Waits until the fill has been seen, lifts the float, lets it down, presses its reset; each time looks what the pump does.
    private IEnumerable<ScenarioEvent> OfWiredFloat(Rack rack, int step, VirtualRun run)
    {
        var place = new FaultTarget(rack.Name) { Rack = rack.Id };
        if (lookAt is null)
        {
            lookAt = run.Now.Elapsed + waitsInStep[step - 1];
            return step == 2 ? [Do(FaultKind.FloatCutoutLifted, place, run)] : [];
        }

        if (run.Now.Elapsed < lookAt)
        {
            return [];
        }

        if (step == 4 && !isPressed)
        {
            (isPressed, lookAt) = (true, run.Now.Elapsed + aMoment);
            return [Do(FaultKind.FloatCutoutReset, place, run)];
        }

        (done, lookAt, isPressed) = (step, null, false);
        var runs = run.Plant.Loads[rack.Pump.Load.Index].CurrentA > 0;
        return [Ask(new AnswerProofTest(name, runs == (step is 1 or 4)), run)];
    }

    // Turns it down as the pump starts, waits, and in the end stops the flood that lacks its pump.
    private IEnumerable<ScenarioEvent> OfTimeRelay(Rack rack, ProofTestProgress test, VirtualRun run)
    {
        if (lookAt is null)
        {
            lookAt = run.Now.Elapsed + (test.Step == 2 ? turnedDownTo : aMoment);
            var place = new FaultTarget(rack.Name) { Rack = rack.Id };
            return test.Step switch
            {
                1 => [Do(FaultKind.TimeCutoutTurned, place, run, turnedDownTo * 2, turnedDownTo.TotalSeconds)],
                3 => [Ask(new Stop(name, rack.Id), run)],
                _ => [],
            };
        }

        if (run.Now.Elapsed < lookAt || test.WaitsForRack)
        {
            return [];
        }

        (done, lookAt) = (test.Step, null);
        var runs = run.Plant.Loads[rack.Pump.Load.Index].CurrentA > 0;
        return [Ask(new AnswerProofTest(name, runs == (test.Step == 1)), run)];
    }

    private static bool IsTimeRelayOf(Rack rack, ProofTestProgress test) =>
        rack.TimeCutout is not null && TimeCutout.NameAt(rack) == test.Item;

    private static bool IsWiredFloatOf(Rack rack, ProofTestProgress test) =>
        rack.FloatCutout is not null && FloatCutout.NameAt(rack) == test.Item;

    private bool AsksForFlood(ProofTestProgress test) =>
        test.Step == 2 || site.Racks.Any(rack => IsWiredFloatOf(rack, test) || IsTimeRelayOf(rack, test));

    // The rack whose pump is tested, itself, by the sensor in its wire or by the float in it.
    private RackId? PumpOf(ProofTestProgress test, Load? load) => load is { Kind: LoadKind.Pump }
        ? load.Rack
        : site.Sensors.FirstOrDefault(sensor => sensor.Name == test.Item && sensor.Kind == SensorKind.PumpCurrent)?.Rack
            ?? site.Racks.FirstOrDefault(rack => IsWiredFloatOf(rack, test) || IsTimeRelayOf(rack, test))?.Id;

    private IEnumerable<ScenarioEvent> Move(Sensor contact, int step, VirtualRun run)
    {
        if (contact.Kind == SensorKind.SupplySense)
        {
            // Somebody closes the breaker when the first step is over.
            return step == 1 ? [Do(FaultKind.BreakerTrip, new FaultTarget(contact.Name) { Circuit = contact.Circuit }, run)] : [];
        }

        var isWetted = contact.HarmfulValue == 1 == (step == 1);
        return [Do(isWetted ? FaultKind.MovedWet : FaultKind.MovedDry, new FaultTarget(contact.Name) { Sensor = contact.Id }, run)];
    }

    private PersonAsks Ask(OperatorRequest request, VirtualRun run) => new(run.Now.Elapsed, $"{name} tests", request);

    private RackFails Do(FaultKind kind, FaultTarget target, VirtualRun run) => Do(kind, target, run, handStays, size: 0);

    private RackFails Do(FaultKind kind, FaultTarget target, VirtualRun run, Duration lasts, double size)
    {
        var fault = target.Fault(kind, run.Plant.Reached, run.Plant.Reached + lasts, size);
        run.Plant.Inject(fault);
        return new RackFails(run.Plant.Reached - MonotonicTime.Zero, $"{name} tests", fault);
    }
}
