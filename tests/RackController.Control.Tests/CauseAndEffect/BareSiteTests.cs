using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests;

/// <summary>Which rows there are on a rack that measures nothing, and which each kind of sensor adds.</summary>
public class BareSiteTests
{
    private static readonly Site bare = Bare();

    [Fact]
    public void WithoutAnySensorThereAreTheRowsThatNeedNone() => Assert.Equal(
        [
            "scan-fault", "supply-lost", "service-hold", "pump-maximum-run", "pump-daily-budget", "pump-rest", "circuit-shed",
            "flood-held", "relay-worn", "clock-stepped", "clock-untrusted", "service-hold-ending",
        ],
        Rows(bare).Except(["proof-test-failed", "proof-test-overdue"]));

    [Theory]
    [InlineData(SensorKind.ReservoirLowFloat, "low-float")]
    [InlineData(SensorKind.LeakRope, "high-water")]
    [InlineData(SensorKind.TrayHighFloat, "high-water")]
    [InlineData(SensorKind.DripTrayFloat, "high-water")]
    [InlineData(SensorKind.PumpFlow, "no-fill")]
    [InlineData(SensorKind.WaterTemperature, "water-temperature")]
    [InlineData(SensorKind.AirTemperature, "air-too-hot")]
    [InlineData(SensorKind.TrayLevel, "not-drained")]
    [InlineData(SensorKind.TrayFullFloat, "not-drained")]
    [InlineData(SensorKind.AirHumidity, "reading-unknown")]
    [InlineData(SensorKind.LightLevel, "light-missing")]
    [InlineData(SensorKind.LightLevel, "light-unasked")]
    public void ASensorAddsItsRow(SensorKind kind, string row)
    {
        var with = bare with
        {
            Sensors =
            [
                Sites.OneRack().Sensors[1] with
                {
                    Id = new SensorId(0), Name = "north/one", Kind = kind, HeightMm = 60, PlausibleMax = 50,
                    TierNumber = kind is SensorKind.TrayHighFloat or SensorKind.TrayLevel or SensorKind.TrayFullFloat
                        or SensorKind.LightLevel ? 1 : null,
                },
            ],
        };
        Assert.Contains(row, Rows(with));
        Assert.DoesNotContain(row, Rows(bare));
    }

    [Theory]
    [InlineData(SensorKind.TrayFullFloat, true, true)]
    [InlineData(SensorKind.TrayFullFloat, false, false)]
    [InlineData(SensorKind.LeakRope, true, false)]
    public void AFullFloatSeesThatNothingFillsWhereFillsEndByIt(SensorKind kind, bool isUntilFull, bool isThere)
    {
        var site = bare with
        {
            Sensors = [Sites.OneRack().Sensors[1] with { Id = new SensorId(0), Kind = kind, TierNumber = 1, HeightMm = 45 }],
        };
        site = !isUntilFull ? site : site.WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(NodaTime.Duration.FromMinutes(6), FullDepthMm: 40) },
        });
        Assert.Equal(isThere, Rows(site).Contains("no-fill"));
    }

    private static Site Bare()
    {
        var site = Sites.OneRack();
        return site with { Sensors = [], Circuits = [site.Circuits[0] with { SupplySense = null }] };
    }

    private static IEnumerable<string> Rows(Site site) =>
        CauseAndEffectTable.Build(new InterlockSite(site, default, [])).Select(interlock => interlock.Row.Id).Distinct();
}
