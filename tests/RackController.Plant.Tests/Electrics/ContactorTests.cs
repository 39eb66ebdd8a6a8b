using RackController.Model;

namespace RackController.Plant.Tests.Electrics;

public class ContactorTests
{
    [Fact]
    public void AnOpenContactorCutsEvenAWeldedRelayAndLeavesTheSupplySensed()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.RelayWelded, 1_000, fault => fault with { Load = rack.Site.Racks[0].Pump.Load });
        rack.Stop();
        Assert.True(rack.Load("north/pump").Powered);

        Cut(rack, isCut: true);
        Assert.All(rack.Plant.Loads, load => Assert.False(load.Powered));
        Assert.Equal(0, rack.Plant.Circuits[0].CurrentA);
        Assert.True(rack.Plant.Circuits[0].IsCut);
        Assert.Equal(1, rack.Reading("sockets/supply sense").Value);

        Cut(rack, isCut: false);
        Assert.True(rack.Load("north/pump").Powered);
    }

    [Fact]
    public void AWeldedContactorCutsNothing()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.ContactorWelded, 100, fault => fault with { Circuit = new CircuitId(0) });
        Cut(rack, isCut: true);
        Assert.True(rack.Load("north/aerator").Powered);
        Assert.False(rack.Plant.Circuits[0].IsCut);

        rack.To(100);
        Assert.False(rack.Load("north/aerator").Powered);
    }

    [Fact]
    public void AContactorClosesWhenTheControllerIsGone()
    {
        var rack = new TestSite(1);
        Cut(rack, isCut: true);
        rack.Plant.ReleaseRelays(rack.Now);
        Assert.True(rack.Load("north/aerator").Powered);
    }

    private static void Cut(TestSite rack, bool isCut)
    {
        var commands = new RelayCommands(rack.Site);
        commands.SetCut(new CircuitId(0), isCut);
        Assert.True(rack.Plant.Write(rack.Now, commands).IsOk);
    }
}
