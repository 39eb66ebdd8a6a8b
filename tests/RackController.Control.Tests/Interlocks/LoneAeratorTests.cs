using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row dead-air of an aerator that is all that is told on of its circuit between floods: lights and fan hang on another.</summary>
public sealed class LoneAeratorTests
{
    [Theory]
    [InlineData(8)]
    [InlineData(15)]
    [InlineData(30)]
    public void ADeadAeratorIsToldOfThoughASensorThatFollowsNothingSaysTheSame(double powerW)
    {
        var circuit = new LiveCircuit(site => Alone(site, powerW));
        circuit.Rig.LeapFor(Duration.FromHours(1));
        circuit.Draws("north/aerator", 0);
        circuit.Rig.LeapFor(Duration.FromHours(13));
        Assert.NotNull(circuit.Rig.Alarm("north/aerator/dead-air"));
    }

    private static Site Alone(Site site, double powerW) => site with
    {
        Circuits = site.Circuits.Add(site.Circuits[0] with { Id = new CircuitId(1), Name = "more sockets", SupplySense = null }),
        Loads =
        [
            .. site.Loads.Select(load => load.Kind is LoadKind.Fan or LoadKind.Light ? load with { Circuit = new CircuitId(1) }
                : load.Kind == LoadKind.Aerator ? load with { PowerW = powerW } : load),
        ],
    };
}
