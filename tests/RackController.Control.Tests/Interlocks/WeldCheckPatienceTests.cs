using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;
using static RackController.Control.Tests.Interlocks.DarkMoments;

namespace RackController.Control.Tests.Interlocks;

/// <summary>How seldom row weld-check comes: not for what it has found, nor while hands are in the rack, and ever less where it finds
/// nothing.</summary>
public sealed class WeldCheckPatienceTests
{
    private const string Pump = "north/pump";
    private const string Aerator = "north/aerator";
    private const string Light = "north/tier 1 light";
    private const string LightWelded = "north/tier 1 light/relay-welded";

    [Fact]
    public void ALightThatIsKnownToBeWeldedBringsOneDarkMomentAndNoMore()
    {
        var circuit = Quiet(WithoutFloods);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Weld(Light);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromHours(7));
        Assert.Single(circuit.Rig.Events.Skip(before), each => each is { Subject: Aerator, What: "off" }
            && each.Because.StartsWith("everything", StringComparison.Ordinal));
        Assert.NotNull(circuit.Rig.Alarm(LightWelded));
    }

    [Fact]
    public void ThatThePlugOfAWeldedLightWasPulledIsSeenAtOnceAndCheckedOnce()
    {
        // The other light is on for five hours more.
        var circuit = Quiet(site => WithoutFloods(site).WithSchedule(plan => plan with { LightStagger = Duration.FromHours(5) }));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Weld(Light);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromHours(3));
        circuit.Mend(Light);
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromMinutes(7));
        Assert.Single(circuit.Rig.Events.Skip(before), each => each is { Subject: Aerator, What: "off" });
        circuit.Rig.Ask(new ResetLatch("Ada", LightWelded));
        circuit.Rig.Ask(new ConfirmReset("Ada", LightWelded));
        circuit.Rig.LeapFor(Duration.FromSeconds(1));
        Assert.NotEqual(AlarmState.Latched, circuit.Rig.Alarm(LightWelded)?.State);
    }

    /// <summary>Two lights of 500 W draw 8.3 A; a twenty-fifth of that is 0.33 A, and the pump draws 0.375 A (arithmetic).</summary>
    [Fact]
    public void ASupplyThatStepsByTheHourBringsNoDarkMomentWhereThePumpsOwnWireTells()
    {
        var circuit = Quiet(site => Bright(WithoutFloods(site)).WithPumpCurrent());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        Step(circuit, 0.04, Duration.FromHours(1), times: 14);
        Assert.Empty(ChecksOf(circuit, Pump));
    }

    [Fact]
    public void APumpThatNothingButItsCircuitTellsOfIsFoundWhateverTheSupplyDidBefore()
    {
        var circuit = Quiet(site => Bright(WithoutFloods(site)).WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        Step(circuit, 0.04, Duration.FromHours(1), times: 8);
        circuit.Weld(Pump);
        circuit.Rig.LeapFor(circuit.Rig.Site.Racks[0].Limits.PumpMaximumRun);
        Assert.True(circuit.Rig.IsCut);
    }

    /// <summary>Where the supply leaps by more than supplies do, once in 2 h: after the fifth check in vain the wait is 160 min
    /// (arithmetic).</summary>
    [Fact]
    public void ChecksThatFindNothingComeLessAndLessOften()
    {
        var circuit = Quiet(site => Bright(WithoutFloods(site)).WithPumpCurrent());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        Step(circuit, 0.055, Duration.FromHours(1), times: 14);
        var checks = ChecksOf(circuit, Pump);
        Assert.InRange(checks.Count, 4, 6);
        Assert.InRange((checks[^1] - checks[^2]).TotalMinutes, 155, 165);
    }

    [Theory]
    [InlineData(Light, false)]
    [InlineData(Pump, true)]
    public void WhileHandsAreInOnlyAPumpIsCheckedFor(string welded, bool isChecked)
    {
        var circuit = Quiet(WithoutFloods);
        if (welded == Light)
        {
            circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        }

        circuit.Weld(welded);
        circuit.Rig.Ask(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(30)));
        if (welded == Light)
        {
            circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
            circuit.Rig.Ask(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(30)));
        }

        circuit.Rig.LeapFor(Duration.FromMinutes(29));
        Assert.Equal(isChecked, ChecksOf(circuit, welded).Count > 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.NotEmpty(ChecksOf(circuit, welded));
    }

    private static void Step(LiveCircuit circuit, double by, Duration every, int times)
    {
        for (var time = 0; time < times; time++)
        {
            circuit.Now(() => circuit.Supply = time % 2 == 0 ? 1 + by : 1);
            circuit.Rig.LeapFor(every);
        }
    }
}
