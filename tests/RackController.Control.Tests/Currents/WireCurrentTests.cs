using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>A sensor in the pump's wire and the one of its circuit: neither takes everybody's light and air away where the other speaks
/// against it. The pump draws 0.375 A, fan and aerator 0.142 A together.</summary>
public class WireCurrentTests
{
    private const string Wire = "north/pump current";
    private readonly LiveCircuit circuit = new(site => site.WithContactor().WithPumpCurrent());

    public WireCurrentTests() => circuit.Rig.LeapFor(Duration.FromMinutes(15));

    [Fact]
    public void AWireThatSaysThePumpRunsWhileItsCircuitCarriesTooLittleForThatIsNotBelieved()
    {
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapFor(Duration.FromMinutes(10));
        Assert.False(circuit.Rig.IsCut);
        Assert.Null(circuit.Rig.Alarm("north/pump/relay-welded"));
    }

    [Fact]
    public void OneThatItsCircuitBearsOutIs()
    {
        circuit.Weld("north/pump");
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void OneWhoseCircuitIsSilentIsBelievedByItself()
    {
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void OneThatSticksAtWhatItReadWhenThePumpStoppedIsNotBelievedThoughLightsAreOn()
    {
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        Assert.True(circuit.Rig.IsOn("north/tier 1 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(10));
        Assert.False(circuit.Rig.IsCut);
    }

    [Fact]
    public void OneThatIsUnknownLeavesTheWordToItsCircuit()
    {
        circuit.Rig.Silence(Wire);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Weld("north/pump");
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void OneThatFellSilentWhileThePumpRanSaysNothingOfItsEnd()
    {
        var rig = new Rig(Sites.OneRack().WithPumpCurrent().WithContactor());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set(Wire, 0.375);
        rig.LeapFor(Duration.FromSeconds(10));
        rig.Silence(Wire);
        rig.LeapFor(Duration.FromSeconds(40));
        Assert.True(rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.False(rig.IsCut);
    }

    [Fact]
    public void WhereWireAndCircuitSawThePumpStopNothingIsChecked()
    {
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Rig.Set(Wire, 0.375);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        circuit.Rig.Set(Wire, 0);
        var before = circuit.Rig.Events.Count;
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.DoesNotContain(circuit.Rig.Events.Skip(before), each =>
            each is { Subject: "north/aerator", What: "off" } && each.Because.Contains("north/pump", StringComparison.Ordinal));
    }
}
