using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Scanning;

/// <summary>A person who does proof tests and floods by the clock, whatever the controller makes of it: moves floats and lets go, says
/// what was
/// seen, and now and then goes away.</summary>
/// <param name="site">The site.</param>
/// <param name="feeds">What its sensors say.</param>
/// <param name="latches">The keys of what can latch.</param>
/// <param name="asked">Where requests go.</param>
internal sealed class RandomTester(Site site, RandomFeed[] feeds, string[] latches, List<OperatorRequest> asked)
{
    private readonly Queue<(Duration After, Action Act)> plan = new();
    private MonotonicTime last;
    private bool mayBeDisturbed = true;

    /// <summary>Whether nothing else happens meanwhile: what takes many floods in a row would hardly come about otherwise.</summary>
    public bool IsLeftAlone => plan.Count > 0 && !mayBeDisturbed;

    /// <summary>Does what is to be done by now.</summary>
    public void GoOn(MonotonicTime now)
    {
        while (plan.TryPeek(out var next) && now >= last + next.After)
        {
            plan.Dequeue().Act();
            last = now;
        }
    }

    /// <summary>Tests one sensor or relay, in a while abandoned or done badly.</summary>
    public void TestOne(Dice dice, MonotonicTime now)
    {
        Begin(now);
        if (dice.Chance(2))
        {
            Test(dice.Of<Sensor>([.. site.Sensors]));
        }
        else
        {
            TestRelay(dice.Of<Load>([.. site.Loads]), isSeen: !dice.Chance(3));
        }

        if (dice.Chance(4))
        {
            plan.Enqueue((Duration.Zero, () => asked.Add(new AbandonProofTest("Ada"))));
        }
    }

    /// <summary>Tests everything of a rack or of a circuit, as well as can be.</summary>
    public void TestRack(Dice dice, MonotonicTime now)
    {
        Begin(now);
        var first = dice.Of<Sensor>([.. site.Sensors]);
        TestSensors(first.Rack, first.Circuit);
        foreach (var load in site.Loads.Where(load => load.Rack == first.Rack))
        {
            TestRelay(load, isSeen: true);
        }
    }

    /// <summary>Floods a rack again and again, with a reservoir that falls as it should and trays that never read full; then tests its
    /// sensors.</summary>
    public void FloodOften(Rack rack, MonotonicTime now)
    {
        const int floods = 5;
        const int fallsToAFlood = 200;
        Begin(now);
        var level = feeds[site.Sensors.First(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.ReservoirLevel).Id.Index];
        for (var flood = 0; flood < floods; flood++)
        {
            Ask(new FloodNow("Ada", rack.Id), 1);
            for (var fall = 0; fall < fallsToAFlood; fall++)
            {
                var levelMm = 350 - fall;
                plan.Enqueue((Duration.FromMilliseconds(500), () => level.Say(levelMm)));
            }
        }

        TestSensors(rack.Id, circuit: null);
        mayBeDisturbed = false;
    }

    private void TestSensors(RackId? rack, CircuitId? circuit)
    {
        foreach (var sensor in site.Sensors.Where(sensor => sensor.Rack == rack && sensor.Circuit == circuit))
        {
            Test(sensor);
        }

        foreach (var latch in latches)
        {
            Ask(new ResetLatch("Ada", latch), 0);
            Ask(new ConfirmReset("Ben", latch), 0);
        }
    }

    private void Begin(MonotonicTime now)
    {
        plan.Clear();
        (last, mayBeDisturbed) = (now, true);
    }

    private void Test(Sensor sensor)
    {
        var feed = feeds[sensor.Id.Index];
        Ask(new BeginProofTest("Ada", sensor.Name), 0);
        if (sensor.HarmfulValue is { } harmful)
        {
            Say(feed, harmful, after: 0);
            Say(feed, 1 - harmful, after: 5);
            plan.Enqueue((Duration.FromSeconds(9), () => { }));
        }
        else if (sensor.Kind == SensorKind.CircuitCurrent)
        {
            var most = site.Loads.Where(load => load.Circuit == sensor.Circuit && load.Kind != LoadKind.Pump)
                .Select(load => load.CurrentA(site[sensor.Circuit!.Value].VoltageV)).DefaultIfEmpty(1).Max();
            Say(feed, 0, after: 0);
            Say(feed, most, after: 8);
            plan.Enqueue((Duration.FromSeconds(12), feed.Heal));
        }
    }

    private void TestRelay(Load load, bool isSeen)
    {
        Ask(new BeginProofTest("Ada", load.Name), 0);
        Ask(new AnswerProofTest("Ada", AsExpected: true), 3);
        if (load.Kind == LoadKind.Pump)
        {
            Ask(new FloodNow("Ada", load.Rack), 1);
        }

        Ask(new AnswerProofTest("Ada", isSeen), 8);
        Ask(new AnswerProofTest("Ada", isSeen), 8);
    }

    private void Ask(OperatorRequest request, int after) => plan.Enqueue((Duration.FromSeconds(after), () => asked.Add(request)));

    private void Say(RandomFeed feed, double value, int after) => plan.Enqueue((Duration.FromSeconds(after), () =>
    {
        feed.Heal();
        feed.Say(value);
    }
    ));
}
