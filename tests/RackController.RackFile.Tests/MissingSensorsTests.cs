namespace RackController.RackFile.Tests;

public sealed class MissingSensorsTests
{
    [Fact]
    public void EachSensorThatARackHasNotIsNamedWithWhatItWouldBuy()
    {
        var missing = MissingSensors.Of(Expect.Site(RackFiles.Small)).ToList();

        Assert.Equal(
            [
                "north, float in a drip tray", "north, level of the reservoir", "north, current in the pump's own wire",
                "north, full float in the trays", "north, water temperature", "sockets, current",
            ],
            missing.Select(sensor => sensor.What));
        Assert.Contains("ends a fill", missing[3].Buys, StringComparison.Ordinal);
    }

    [Fact]
    public void ACircuitThatCannotTellALostSupplyIsNamedAfterTheRacks()
    {
        var site = Expect.Site(RackFiles.SmallWith("    sensors: { supply-sense: yes }\n", ""));

        Assert.Equal(["sockets, supply sense", "sockets, current"], MissingSensors.Of(site).TakeLast(2).Select(sensor => sensor.What));
    }
}
