using NodaTime;
using RackController.Control.Tests.Currents;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row load-check: what it finds is told by dead-air.</summary>
public sealed class LoadCheckTests
{
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
    }
}
