using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>All that an interlock can be told by the facts of one scan.</summary>
/// <param name="Now">The moment.</param>
/// <param name="Before">The moment of the scan before.</param>
/// <param name="Sensors">What each sensor of the site says; null while it is unknown.</param>
/// <param name="On">Whether each load of the site was told on.</param>
/// <param name="Flows">What is known of the current of each load of the site.</param>
/// <param name="About">What the rack is about.</param>
/// <param name="Conditions">How the scan went.</param>
/// <param name="IsShedding">Whether the circuit sheds.</param>
/// <param name="IsCut">Whether the circuit's contactor was told to cut it.</param>
/// <param name="HoldEndsAt">When hands are out of the rack again.</param>
/// <param name="Tests">How the proof tests stand.</param>
internal sealed record Surroundings(
    Moment Now, Moment Before, ImmutableArray<double?> Sensors, ImmutableArray<bool> On, ImmutableArray<Flow> Flows,
    RackFacts About, ScanConditions Conditions, bool IsShedding, bool IsCut, MonotonicTime? HoldEndsAt, TestsTold Tests)
{
    /// <summary>A rack at rest on which nothing is wrong.</summary>
    public static Surroundings AtRest(Site site)
    {
        var now = new Moment(MonotonicTime.FromMilliseconds(5_000), Instant.FromUtc(2026, 6, 1, 16, 0), WallTrusted: true);
        return new Surroundings(
            now, now, [.. site.Sensors.Select(sensor => (double?)Harmless(sensor))], [.. site.Loads.Select(_ => false)],
            [.. site.Loads.Select(_ => Flow.Unknown)],
            new RackFacts { FloodNumber = Portrait.FirstFlood, FilledFlood = Portrait.FirstFlood }, ScanConditions.Good,
            IsShedding: false, IsCut: false, HoldEndsAt: null,
            new TestsTold(now.Wall, HasFailed: false, UnderWay: null, JustPassed: null));
    }

    /// <summary>What a sensor says when nothing is wrong.</summary>
    public static double Harmless(Sensor sensor) => 1 - sensor.HarmfulValue ?? (sensor.PlausibleMin + sensor.PlausibleMax) / 2;

    /// <summary>The same, some time later.</summary>
    public Surroundings After(Duration time)
    {
        var now = Now with { Monotonic = Now.Monotonic + time, Wall = Now.Wall + time };
        return this with
        {
            Before = Now,
            Now = now,
            HoldEndsAt = HoldEndsAt <= now.Monotonic ? null : HoldEndsAt,
            Tests = Tests with { JustPassed = null },
        };
    }

    /// <summary>With one sensor saying something else.</summary>
    public Surroundings With(SensorId sensor, double? value) => this with { Sensors = Sensors.SetItem(sensor.Index, value) };

    /// <summary>With one load told something else.</summary>
    public Surroundings With(LoadId load, bool isOn) => this with { On = On.SetItem(load.Index, isOn) };

    /// <summary>With something else known of the current of one load.</summary>
    public Surroundings With(LoadId load, Flow flow) => this with { Flows = Flows.SetItem(load.Index, flow) };

    /// <summary>Told as the facts of a scan.</summary>
    /// <param name="facts">The facts.</param>
    /// <param name="tests">The proof tests.</param>
    /// <param name="desk">What people ask of the rack.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="area">Who asks.</param>
    public void Tell(Facts facts, WalkedTests tests, RackDesk desk, Area rack, Area area)
    {
        var commands = new RelayCommands(facts.Site);
        foreach (var load in facts.Site.Loads)
        {
            commands[load.Id] = On[load.Id.Index] ? SwitchState.On : SwitchState.Off;
            facts.SetFlow(load.Id, Flows[load.Id.Index]);
        }

        commands.SetCut(new CircuitId(0), IsCut);

        facts.Begin(Before, Conditions, commands);
        facts.Begin(Now, Conditions, commands);
        foreach (var sensor in facts.Site.Sensors)
        {
            if (Sensors[sensor.Id.Index] is { } value)
            {
                facts.Know(sensor.Id, value);
            }
            else
            {
                facts.Forget(sensor.Id);
            }
        }

        foreach (var circuit in facts.Site.Circuits)
        {
            facts.SetShedding(circuit.Id, IsShedding);
        }

        tests.Tell(Tests, Now);
        desk.EndHold();
        if (HoldEndsAt is { } end)
        {
            desk.BeginHold(Now.Monotonic, end - Now.Monotonic);
        }

        facts.AskedBy(rack);
        facts.About(new RackId(0)) = About;
        facts.BeginLook(area);
        facts.AskedBy(area);
    }
}
