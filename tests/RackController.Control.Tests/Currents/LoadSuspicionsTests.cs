using NodaTime;

namespace RackController.Control.Tests.Currents;

/// <summary>What stops without being switched, and what is made of that.</summary>
public sealed class LoadSuspicionsTests
{
    private const string Light = "north/tier 1 light";

    [Theory]
    [InlineData(45)]
    [InlineData(60)]
    public void TwoLightsThatDieInOneMomentAreToldOfAlsoWhenAFloodBeginsThen(int minutes)
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/tier 2 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(minutes));
        circuit.Draws(Light, 0);
        circuit.Draws("north/tier 2 light", 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(15));
        Assert.NotNull(circuit.Rig.Alarm("north/tier 1 light/dead-load"));
        Assert.NotNull(circuit.Rig.Alarm("north/tier 2 light/dead-load"));
        Assert.Null(circuit.Rig.Alarm("north/aerator/dead-air"));
    }

    [Fact]
    public void ALightThatDiesInTheMomentInWhichThePumpIsSwitchedIsFoundByACheck()
    {
        var circuit = new LiveCircuit();
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn("north/pump"));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/pump"));
        circuit.Draws(Light, 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm("north/tier 1 light/dead-load")!.State);
        Assert.Null(circuit.Rig.Alarm("north/tier 2 light/dead-load"));
        Assert.Null(circuit.Rig.Alarm("north/tier 1 light/relay-welded"));
    }
}
