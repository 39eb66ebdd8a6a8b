namespace RackController.RackFile.Tests;

public sealed class MissingSensorsTests
{
    [Fact]
    public void EachSensorThatARackHasNotIsNamedWithWhatItWouldBuy()
    {
        var missing = MissingSensors.Of(Expect.Site(RackFiles.Small)).ToList();

        Assert.Equal(
            ["north, float in a drip tray", "north, level of the reservoir", "north, full float in the trays", "north, water temperature"],
            missing.Select(sensor => sensor.What));
        Assert.Contains("ends a fill", missing[2].Buys, StringComparison.Ordinal);
    }

    [Fact]
    public void ACircuitThatCannotTellALostSupplyIsNamedLast()
    {
        var site = Expect.Site(RackFiles.SmallWith("    sensors: { supply-sense: yes }\n", ""));

        Assert.Equal("sockets, supply sense", MissingSensors.Of(site).Last().What);
    }
}
