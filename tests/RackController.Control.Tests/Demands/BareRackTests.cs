using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>A rack with a pump and nothing else but what keeps water and air alive: neither lights nor valves.</summary>
public class BareRackTests
{
    [Fact]
    public void ARackWithoutLightsSpreadsItsFloodsOverTheDay()
    {
        var rig = new Rig(Bare(new FloodsOverPhotoperiod(4)), Instant.FromUtc(2026, 6, 1, 16, 30));
        rig.LeapFor(Duration.FromDays(2));
        Assert.Equal(8, rig.Events.Count(each => each is { Subject: "north/pump", What: "on" }));
    }

    [Fact]
    public void ARackWithoutFloodsNeverRunsItsPumpAndHasNoneToWaitForAfterARestart()
    {
        var rig = new Rig(Bare(new NoFloods()));
        rig.LeapFor(Duration.FromDays(1));
        rig.TrustWall(false);
        rig.Restart(Duration.FromDays(1), wallTrusted: false);
        rig.LeapFor(Duration.FromDays(1));
        Assert.DoesNotContain(rig.Events, each => each is { Subject: "north/pump", What: "on" });
        Assert.DoesNotContain(rig.Control.DueNext(), due => due.What == "flood");
    }

    [Fact]
    public void ARackWithoutLightsMayBeginWithoutAClock()
    {
        var rig = new DemandRig(Bare(new FloodsOverPhotoperiod(4)), Instant.FromUtc(2000, 1, 1, 0, 0), trusted: false);
        rig.Run(Duration.FromHours(7));
        Assert.Single(rig.When(FloodEvent.Due));
    }

    [Fact]
    public void ALoadThatHasNoPlaceInTheScheduleIsADefect()
    {
        var site = Sites.OneRack();
        var fan = site.Loads.Single(load => load.Kind == LoadKind.Fan);
        var forgotten = fan with { Id = new LoadId(site.Loads.Length), Name = "north/second fan" };
        Assert.Throws<InvariantBrokenException>(() => new Rig(site with { Loads = site.Loads.Add(forgotten) }));
    }

    [Fact]
    public void ALoadThatRunsByTheReadingOfAnotherRackIsADefect()
    {
        var site = Sites.ManyRacks(2, racksToACircuit: 2);
        var other = site.Sensors.First(sensor => sensor.Rack == new RackId(1));
        var fan = site.LoadNamed("rack 1/fan");
        Assert.Throws<InvariantBrokenException>(() => new Rig(site.WithSchedule(schedule => schedule with
        {
            Runs = [.. schedule.Runs.Where(run => run.Load != fan), new RunByReading(fan, other.Id, OnAbove: 28, OffBelow: 24)],
        })));
    }

    private static Site Bare(FloodTimes times)
    {
        var site = Sites.OneRack();
        return site with
        {
            Loads = site.Loads[..3],
            Racks =
            [
                site.Racks[0] with
                {
                    Tiers = [.. site.Racks[0].Tiers.Select(tier => tier with { Light = null, Valve = null })],
                    Schedule = site.Racks[0].Schedule with
                    {
                        Lights = [null, null],
                        Floods = site.Racks[0].Schedule.Floods with { Times = times },
                    },
                },
            ],
        };
    }
}
