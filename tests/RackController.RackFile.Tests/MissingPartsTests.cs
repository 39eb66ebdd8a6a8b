using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests;

public sealed class MissingPartsTests
{
    [Fact]
    public void EachPartThatARackHasNotIsNamedWithWhatItWouldBuy()
    {
        var missing = MissingParts.Of(Expect.Site(RackFiles.Small)).ToList();

        Assert.Equal(
            [
                "north, float in a drip tray", "north, level of the reservoir", "north, current in the pump's own wire",
                "north, full float in the trays", "north, light sensor at each canopy", "north, water temperature", "sockets, current",
                "sockets, contactor upstream, and the current of its pumps", "north, time relay in the pump's own wire",
            ],
            missing.Select(part => part.What));
        Assert.Contains("ends a fill", missing[3].Buys, StringComparison.Ordinal);
    }

    [Fact]
    public void ACircuitThatCannotTellALostSupplyIsNamed()
    {
        var site = Expect.Site(RackFiles.SmallWith("    sensors: { supply-sense: yes }\n", ""));

        Assert.Contains("sockets, supply sense", MissingParts.Of(site).Select(part => part.What));
    }

    [Theory]
    [InlineData("low-float: 60 mm", "low-float: 60 mm", "low float in the reservoir")]
    [InlineData("low-float: 60 mm", "low-float: 60 mm\n      drip-tray-float: 15 mm", "float in a drip tray")]
    [InlineData("low-float: 60 mm", "low-float: 60 mm\n      reservoir-level: yes", "level of the reservoir")]
    [InlineData("low-float: 60 mm", "low-float: 60 mm\n      pump-current: yes", "current in the pump's own wire")]
    [InlineData("low-float: 60 mm", "low-float: 60 mm\n      water-temperature: yes", "water temperature")]
    [InlineData("supply-sense: yes", "supply-sense: yes, current: yes", "current")]
    public void AFittedSensorIsTheOneThatAFileWouldWrite(string old, string with, string what)
    {
        var written = Expect.Site(RackFiles.SmallWith(old, with)).Sensors;
        var without = Expect.Site(RackFiles.SmallWith(old, what.StartsWith("low", StringComparison.Ordinal) ? "" : old));
        var fitted = MissingParts.Of(without).First(part => part.What.EndsWith(what, StringComparison.Ordinal)).Fitted.Sensors[^1];
        var same = Assert.Single(written, sensor => sensor.Name == fitted.Name);
        Assert.Equal(same with { Id = fitted.Id, HeightMm = fitted.HeightMm }, fitted);
        Assert.Equal(same.HeightMm, fitted.HeightMm, 0.1);
    }

    [Fact]
    public void FloatsOfTraysAreFittedToEveryTrayThatIsInUse()
    {
        var missing = MissingParts.Of(Expect.Site(RackFiles.Small));
        var fitted = missing.First(part => part.What.Contains("full float", StringComparison.Ordinal)).Fitted;
        var floats = fitted.Sensors.Where(sensor => sensor.Kind == SensorKind.TrayFullFloat).ToList();
        Assert.Equal([1, 2], floats.Select(sensor => sensor.TierNumber));
        Assert.All(floats, one => Assert.True(one.HeightMm < fitted.Racks[0].Tier(one.TierNumber!.Value).Tray.StandpipeHeightMm));
    }

    [Fact]
    public void ALightSensorIsFittedWhereALampIsToBeSeen()
    {
        var site = Expect.Site(RackFiles.Small);
        var fitted = MissingParts.Of(site).First(part => part.What.Contains("light sensor", StringComparison.Ordinal)).Fitted;
        var sensors = fitted.Sensors.Where(sensor => sensor.Kind == SensorKind.LightLevel).ToList();
        Assert.Equal(["north/tier 1 light level", "north/tier 2 light level"], sensors.Select(sensor => sensor.Name));
        var dark = site with
        {
            Racks = [site.Racks[0] with { Tiers = [.. site.Racks[0].Tiers.Select(tier => tier with { PpfdUmolPerM2S = 0 })] }],
        };
        Assert.DoesNotContain(MissingParts.Of(dark), part => part.What.Contains("light sensor", StringComparison.Ordinal));
    }

    [Fact]
    public void AHighFloatIsFittedBetweenWhatAFloodReachesAndTheRim()
    {
        var bare = Expect.Site(RackFiles.SmallWith("sensors: { high-float: 65 mm }", ""));
        var fitted = MissingParts.Of(bare).First(part => part.What.Contains("high float", StringComparison.Ordinal)).Fitted;
        Assert.All(fitted.Sensors.Where(sensor => sensor.Kind == SensorKind.TrayHighFloat), sensor =>
        {
            var tray = fitted.Racks[0].Tier(sensor.TierNumber!.Value).Tray;
            Assert.InRange(sensor.HeightMm, tray.StandpipeHeightMm + 10, tray.RimDepthMm - 5);
        });
    }

    [Fact]
    public void ADripTrayComesWithItsFloatWhereThereIsNone()
    {
        var bare = Expect.Site(RackFiles.SmallWith("drip-tray: { capacity: 60 L, depth: 100 mm }", "")
            .Replace("wired: { float-cutout: 25 mm }", "", StringComparison.Ordinal));
        Assert.Null(bare.Racks[0].DripTray);
        var fitted = MissingParts.Of(bare).First(part => part.What.Contains("drip tray", StringComparison.Ordinal)
            && part.What.Contains("float", StringComparison.Ordinal)).Fitted;
        Assert.True(fitted.Racks[0].DripTray!.CapacityL > fitted.Racks[0].Tiers[0].Tray.AreaM2 * 85 / 2);
    }

    [Fact]
    public void AContactorComesWithTheCurrentOfTheLoadThatItIsThereFor()
    {
        var missing = MissingParts.Of(Expect.Site(RackFiles.Small));
        var fitted = missing.Single(part => part.What.Contains("contactor", StringComparison.Ordinal)).Fitted;
        Assert.True(fitted.Circuits[0].HasUpstreamContactor);
        Assert.Single(fitted.Sensors, sensor => sensor.Kind == SensorKind.PumpCurrent);
    }

    /// <summary>The only parts that act by themselves, and by what they alone keep off.</summary>
    [Fact]
    public void WiredPartsAreFittedToThePumpsOwnWire()
    {
        var bare = Expect.Site(RackFiles.SmallWith("    wired: { float-cutout: 25 mm }\n", ""));
        var wired = MissingParts.Of(bare).Where(part => part.IsWired).ToList();
        Assert.Equal(["north, float in the pump's own wire", "north, time relay in the pump's own wire"], wired.Select(part => part.What));
        Assert.Equal(new FloatCutout(null, 15), wired[0].Fitted.Racks[0].FloatCutout);
        Assert.Equal(new TimeCutout(Duration.FromMinutes(20)), wired[1].Fitted.Racks[0].TimeCutout);
    }
}
