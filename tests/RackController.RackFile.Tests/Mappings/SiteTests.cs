using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.RackFile.Tests.Mappings;

/// <summary>What is written arrives in the site, and what is not written has its default.</summary>
public sealed class SiteTests
{
    private static readonly Site Small = Expect.Site(RackFiles.Small);

    [Fact]
    public void LoadsAreNamedAfterTheirRackAndTier() => Assert.Equal(
        (string[])
        [
            "north/pump", "north/aerator", "north/fan", "north/tier 1 light", "north/tier 1 valve", "north/tier 2 light",
            "north/tier 2 valve",
        ],
        Small.Loads.Select(load => load.Name));

    [Fact]
    public void SensorsAreNamedAfterWhatTheyWatch() => Assert.Equal(
        (string[])
        [
            "sockets/supply sense", "north/reservoir low float", "north/leak rope", "north/air temperature", "north/tier 1 high float",
        ],
        Small.Sensors.Select(sensor => sensor.Name));

    [Fact]
    public void EveryIdentityIsItsPlace()
    {
        Assert.All(Small.Loads.Index(), pair => Assert.Equal(pair.Index, pair.Item.Id.Index));
        Assert.All(Small.Sensors.Index(), pair => Assert.Equal(pair.Index, pair.Item.Id.Index));
        Assert.Equal(Small.SensorNamed("sockets/supply sense"), Small.Circuits[0].SupplySense);
        Assert.Equal(Small.LoadNamed("north/tier 2 light"), Small.Racks[0].Tier(2).Light);
        Assert.Equal(Small.LoadNamed("north/tier 1 valve"), Small.Racks[0].Tier(1).Valve);
    }

    [Fact]
    public void SafeStatesAndContactsFollowTheKindOfLoad() => Assert.All(Small.Loads, load =>
    {
        var runsWhenDead = load.Kind is LoadKind.Fan or LoadKind.Aerator;
        Assert.Equal(runsWhenDead ? SwitchState.On : SwitchState.Off, load.SafeState);
        Assert.Equal(runsWhenDead ? RelayContact.NormallyClosed : RelayContact.NormallyOpen, load.Contact);
    });

    [Fact]
    public void LimitsThatAreNotWrittenAreTheModelsDefaults() => Assert.Equal(InterlockLimits.Default, Small.Racks[0].Limits);

    [Fact]
    public void ScanTimingThatIsNotWrittenIsTheModelsDefault() => Assert.Equal(ScanTiming.Default, Small.Scan);

    [Fact]
    public void ATiersTrayTakesFromTheRacksTrayWhatItDoesNotSay()
    {
        var text = RackFiles.SmallWith("    tiers:\n", "    tray: { standpipe: 42 mm, media: hemp mat }\n    tiers:\n");
        var (first, second) = (Expect.Site(text).Racks[0].Tier(1).Tray, Expect.Site(text).Racks[0].Tier(2).Tray);

        Assert.Equal((42, 40), (first.StandpipeHeightMm, second.StandpipeHeightMm));
        Assert.Equal(("hemp mat", "hemp mat"), (first.Contents.Media, second.Contents.Media));
        Assert.Equal(85, second.RimDepthMm);
    }

    [Fact]
    public void FiguresAreShownInTheUnitsThatAreChosen()
    {
        Assert.Same(ShownUnits.Metric, Small.Units);
        Assert.Same(ShownUnits.UsCustomary, Expect.Site(RackFiles.SmallWith("\nzone:", "\nunits: us\nzone:")).Units);
        Expect.Complaint(RackFiles.SmallWith("\nzone:", "\nunits: imperial\nzone:"), "`units` is `imperial`: write `metric` or `us`");
    }

    [Fact]
    public void ATierMayBeLitAtItsOwnTime()
    {
        var site = Expect.Site(RackFiles.SmallWith(
            "lights: { on: 06:00, for: 16 h }",
            "lights: { on: 06:00, for: 16 h, stagger: 30 s, tiers: [{ tier: 2, on: 20:00, for: 12 h 30 min }] }"));

        Assert.Equal(new Photoperiod(new LocalTime(6, 0), Duration.FromHours(16)), site.Racks[0].Schedule.Lights[0]);
        Assert.Equal(new Photoperiod(new LocalTime(20, 0), Duration.FromMinutes(750)), site.Racks[0].Schedule.Lights[1]);
        Assert.Equal(Duration.FromSeconds(30), site.Racks[0].Schedule.LightStagger);
    }

    [Fact]
    public void FansRunAsWritten()
    {
        var text = RackFiles.SmallWith(
            "- power: 12 W", "- { power: 12 W, run: { on: 10 min, off: 20 min } }\n"
            + "      - { power: 9 W, run: { on-above: 79 °F, off-below: 75 °F } }");
        var runs = Expect.Site(text).Racks[0].Schedule.Runs;

        Assert.IsType<RunAlways>(runs[0]);
        Assert.Equal(new RunInCycles(new LoadId(2), Duration.FromMinutes(10), Duration.FromMinutes(20)), runs[1]);
        var byReading = Assert.IsType<RunByReading>(runs[2]);
        Assert.Equal(Expect.Site(text).SensorNamed("north/air temperature"), byReading.Sensor);
        Assert.Equal(26.111, byReading.OnAbove, 0.001);
    }

    [Fact]
    public void AFillUntilFullTakesFiveMillimetresBelowTheLowestStandpipe()
    {
        var text = RackFiles.SmallWith("fill: 5 min", "fill: { until-full-within: 8 min }")
            .Replace("high-float: 65 mm", "high-float: 65 mm, tray-level: yes", StringComparison.Ordinal);

        Assert.Equal(new FillUntilFull(Duration.FromMinutes(8), 35), Expect.Site(text).Racks[0].Schedule.Floods.Fill);
    }

    [Fact]
    public void ARackWithoutFloodsRests() => Assert.IsType<NoFloods>(Expect.Site(
        RackFiles.Small[..RackFiles.Small.IndexOf("      floods:", StringComparison.Ordinal)]).Racks[0].Schedule.Floods.Times);

    [Fact]
    public void ASensorThatIsNotFittedIsNotThere() =>
        Assert.DoesNotContain(
            Expect.Site(RackFiles.SmallWith("air-temperature: yes", "air-temperature: no")).Sensors,
            sensor => sensor.Kind == SensorKind.AirTemperature);
}
