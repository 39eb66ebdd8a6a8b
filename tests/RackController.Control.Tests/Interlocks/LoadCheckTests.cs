using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row load-check: what it finds is told by dead-air.</summary>
public sealed class LoadCheckTests
{
    private const string Light = "north/tier 1 light";

    [Fact]
    public void TheFirstCheckComesTenMinutesAfterTheStartAndSaysWhatItIs()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/aerator"));
        circuit.Rig.LeapFor(Duration.FromMinutes(9));
        Assert.True(circuit.Rig.IsOn("north/aerator"));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/aerator"));
        Assert.Contains(circuit.Rig.Why("north/aerator").Interlocks, words => words.StartsWith("load-check: ", StringComparison.Ordinal));
    }

    [Fact]
    public void ItIsNoAlarmAndEndsByItself()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.True(circuit.Rig.IsOn("north/aerator"));
        Assert.DoesNotContain(circuit.Rig.Control.Alarms(), alarm => alarm.Key.EndsWith("/load-check", StringComparison.Ordinal));

        // Nor is it news: what it switched is told by the load.
        Assert.DoesNotContain(circuit.Rig.Events, each => each.Subject.EndsWith("/load-check", StringComparison.Ordinal));
    }

    [Fact]
    public void ItLastsEightSeconds()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/aerator"));
        var off = circuit.Rig.Now.Monotonic;
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/aerator"));
        Assert.Equal(Duration.FromSeconds(8), circuit.Rig.Now.Monotonic - off);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhileNothingCanBeSeenNothingIsChecked(bool isSilent)
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        if (isSilent)
        {
            circuit.Rig.Silence("sockets/current");
        }
        else
        {
            circuit.Rig.Conditions = ScanConditions.Good with { Io = new IoOutcome("the board is gone") };
        }

        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromHours(isSilent ? 30 : 1));
        Assert.DoesNotContain(circuit.Rig.Events.Skip(before), each => each is { Subject: "north/aerator" or "north/fan", What: "off" });
    }

    [Fact]
    public void ALightThatNobodyDoubtsIsNotChecked()
    {
        var circuit = Lit();
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromHours(15));
        Assert.True(circuit.Rig.IsOn(Light));
        Assert.DoesNotContain(circuit.Rig.Events.Skip(before), each => each is { Subject: Light, What: "off" });
    }

    [Fact]
    public void ALightOfWhichNothingIsKnownIsNotChecked()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Speak("sockets/current");
        circuit.Rig.LeapFor(Duration.FromHours(3));
        Assert.DoesNotContain(circuit.Rig.Events, each => each is { Subject: Light, What: "off" });
    }

    [Fact]
    public void ALightThatSeemsDeadSoonAfterItCameOnIsCheckedTenMinutesAfterThat()
    {
        var circuit = Lit();
        var on = circuit.Rig.Events.Last(each => each is { Subject: Light, What: "on" }).At.Monotonic;
        circuit.Draws(Light, 0);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        Assert.InRange((circuit.Rig.Now.Monotonic - on).TotalMinutes, 10, 13);
    }

    [Fact]
    public void ItWaitsForHandsThatAreInTheRack()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.Ask(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(30)));
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromMinutes(29.9));
        Assert.DoesNotContain(circuit.Rig.Events.Skip(before), each => each is { Kind: EventKind.Load, What: "off" });
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Contains(circuit.Rig.Events.Skip(before), each => each is { Subject: "north/aerator", What: "off" });
    }

    [Fact]
    public void WhereRelaysRestLongTwoChecksNeverFallTogether()
    {
        var circuit = new LiveCircuit(site => site.WithLimits(limits => limits with { RelayRest = Duration.FromMinutes(10) }));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        var (checks, end) = (0, circuit.Rig.Now.Monotonic + Duration.FromDays(4));
        while (circuit.Rig.Now.Monotonic < end)
        {
            circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/aerator") || !circuit.Rig.IsOn("north/fan"));
            Assert.True(circuit.Rig.IsOn("north/aerator") || circuit.Rig.IsOn("north/fan"));
            circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/aerator") == circuit.Rig.IsOn("north/fan"));
            Assert.True(circuit.Rig.IsOn("north/aerator"));
            checks++;
        }

        Assert.InRange(checks, 14, 20);
    }

    private static LiveCircuit Lit()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        return circuit;
    }
}
