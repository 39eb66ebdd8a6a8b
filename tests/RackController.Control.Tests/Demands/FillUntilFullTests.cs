using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

public class FillUntilFullTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);

    internal static readonly Site Site = WithFullFloats(Sites.OneRack());

    [Fact]
    public void TheFillIsOverWhenEveryTrayReadsFull()
    {
        var rig = Filling();
        Read(rig, full: 1);
        rig.Run(Duration.FromMinutes(1));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
        Assert.Equal(
            "a flood fills the trays until they are full, until 07:08 at the latest",
            rig.Demand.Words(rig["north/pump"], rig.Id("north/pump"), rig.Now.Monotonic));
        Read(rig, full: 2);
        rig.Scan();
        Assert.Equal(FloodPhase.Soaking, rig.Demand.Phase);
        Assert.Equal("every tray reads full", rig.Events.Single(each => each.What == FloodEvent.Soaking).Because);
        Assert.False(rig.Demand.FillHitItsLimit);
    }

    [Fact]
    public void AFillThatReachesItsLimitGoesOnAndSaysSo()
    {
        var rig = Filling();
        rig.Run(Duration.FromMinutes(8));
        Assert.Equal(FloodPhase.Soaking, rig.Demand.Phase);
        Assert.True(rig.Demand.FillHitItsLimit);
        Assert.Equal(
            "not every tray read full within 8 min", rig.Events.Single(each => each.What == FloodEvent.FillLimit).Because);
        Assert.Equal("the time to fill is over", rig.Events.Single(each => each.What == FloodEvent.Soaking).Because);
        Assert.Equal(Duration.FromMinutes(8), rig.When(FloodEvent.Soaking).Single() - rig.When(FloodEvent.Filling).Single());
    }

    [Fact]
    public void AnUnknownReadingCountsAsNotFull()
    {
        var rig = Filling();
        Read(rig, full: 2);
        rig.Facts.Forget(Site.SensorNamed("north/tier 2 full float"));
        rig.Run(Duration.FromMinutes(1));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
    }

    [Fact]
    public void WithoutAnySensorOfFullTraysTheFillTakesItsLimit()
    {
        var rig = Filling(Site with { Sensors = Sites.OneRack().Sensors });
        rig.Run(Duration.FromMinutes(7));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
        rig.Run(Duration.FromMinutes(1));
        Assert.True(rig.Demand.FillHitItsLimit);
    }

    [Fact]
    public void TheTraysOfAnotherRackAreNotWaitedFor()
    {
        var two = Sites.ManyRacks(racks: 2, racksToACircuit: 1, tiers: 1);
        var site = (two with
        {
            Sensors =
            [
                .. two.Sensors,
                .. two.Sensors.Where(sensor => sensor.Kind == SensorKind.TrayHighFloat).Select((high, i) => high with
                {
                    Id = new SensorId(two.Sensors.Length + i),
                    Kind = SensorKind.TrayFullFloat,
                }),
            ],
        }).WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(8), FullDepthMm: 40) },
        });
        var rig = Filling(site);
        rig.Facts.Know(site.Sensors[^2].Id, 1);
        rig.Scan();
        Assert.Equal(FloodPhase.Soaking, rig.Demand.Phase);
    }

    [Fact]
    public void ATierOutOfUseIsNotWaitedFor()
    {
        var rig = Filling();
        Read(rig, full: 1);
        Assert.True(rig.Demand.TrySetTierInUse(2, false, out _));
        rig.Scan();
        Assert.Equal(FloodPhase.Soaking, rig.Demand.Phase);
    }

    [Fact]
    public void ALevelReadsFullAtTheDepthOfTheRule()
    {
        var site = Site with
        {
            Sensors = Site.Sensors.Replace(
                Site.Sensors[^1], Site.Sensors[^1] with { Kind = SensorKind.TrayLevel, PlausibleMax = 100 }),
        };
        var rig = Filling(site);
        rig.Facts.Know(site.Sensors[^2].Id, 1);
        rig.Facts.Know(site.Sensors[^1].Id, 39.9);
        rig.Run(Duration.FromMinutes(1));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
        rig.Facts.Know(site.Sensors[^1].Id, 40);
        rig.Scan();
        Assert.Equal(FloodPhase.Soaking, rig.Demand.Phase);
    }

    [Fact]
    public void TheMarkOfASlowFillSurvivesARestartAndGoesWithTheNextGoodOne()
    {
        var rig = Filling();
        rig.Run(Duration.FromHours(1));
        var again = new DemandRig(Site, rig.Now.Wall, memory: rig.Save());
        Assert.True(again.Demand.FillHitItsLimit);
        Read(again, full: 2);
        again.Run(Duration.FromHours(7));
        Assert.False(again.Demand.FillHitItsLimit);
    }

    private static DemandRig Filling(Site? site = null)
    {
        var rig = new DemandRig(site ?? Site, Seven - Duration.FromMinutes(1));
        rig.Run(Duration.FromMinutes(1) + Duration.FromSeconds(1));
        Assert.Equal(FloodPhase.Filling, rig.Demand.Phase);
        return rig;
    }

    /// <summary>Lets the full floats of the first tiers read full, and those of the others not.</summary>
    private static void Read(DemandRig rig, int full)
    {
        for (var tier = 1; tier <= 2; tier++)
        {
            rig.Facts.Know(Site.SensorNamed($"north/tier {tier} full float"), tier <= full ? 1 : 0);
        }
    }

    private static Site WithFullFloats(Site site)
    {
        var sensors = site.Sensors;
        foreach (var high in site.Sensors.Where(sensor => sensor.Kind == SensorKind.TrayHighFloat))
        {
            sensors = sensors.Add(high with
            {
                Id = new SensorId(sensors.Length),
                Name = $"north/tier {high.TierNumber} full float",
                Kind = SensorKind.TrayFullFloat,
                HeightMm = 40,
            });
        }

        return (site with { Sensors = sensors }).WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(8), FullDepthMm: 40) },
        });
    }
}
