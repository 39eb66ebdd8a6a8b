using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Sensing;

/// <summary>When a reading that stood still is doubted and believed again, to the scan, though nobody scans in between.</summary>
public class DoubtTimesTests
{
    private const string Level = "north/level";
    private const string Flow = "north/flow";
    private const string Air = "north/air";

    [Fact]
    public void ALevelThatMovesAtFourLooksInARowIsBelievedAtTheFourth()
    {
        var rig = Doubted();
        MoveFor(rig, minutes: 5);
        Assert.Equal(Duration.FromMinutes(3), Known(rig) - Unknown(rig));
    }

    [Fact]
    public void ALookAtWhichItSaysNothingCountsNeitherWay()
    {
        var rig = Doubted();
        MoveFor(rig, minutes: 1);
        rig.Silence(Level);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Speak(Level);
        MoveFor(rig, minutes: 4);
        Assert.Equal(Duration.FromMinutes(4), Known(rig) - Unknown(rig));
    }

    [Fact]
    public void OnceItIsBelievedNobodyLooksAnyMore()
    {
        var rig = Doubted();
        MoveFor(rig, minutes: 5);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromHours(1));
        Assert.True(rig.Control.NextChange > rig.Now.Monotonic + Duration.FromMinutes(5));
    }

    [Fact]
    public void FrozenAirIsFoundAtTheHour()
    {
        var rig = new Rig(With((Air, SensorKind.AirTemperature)));
        var start = rig.Now.Monotonic;
        rig.Set(Air, 22);
        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));
        rig.LeapUntil(() => !rig.IsOn("north/tier 1 light"));
        rig.LeapFor(Duration.FromHours(3));
        var found = rig.Events.First(each => each is { Subject: Air, What: "unknown" }).At.Monotonic - start;

        // The doubt counts from the next scan.
        Assert.Equal(Duration.FromMilliseconds(100), Duration.FromTicks(found.BclCompatibleTicks % NodaConstants.TicksPerHour));
    }

    [Fact]
    public void OfTwoRacksEachMindsItsOwnAir()
    {
        var site = Sites.ManyRacks(racks: 2, racksToACircuit: 1);
        var rig = new Rig(site with
        {
            Sensors =
            [
                .. site.Sensors,
                .. site.Racks.Select((rack, i) => site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length + i),
                    Name = $"{rack.Name}/air",
                    Rack = rack.Id,
                    Kind = SensorKind.AirTemperature,
                    PlausibleMax = 50,
                }),
            ],
        });
        rig.LeapFor(Duration.FromHours(13));
        Assert.All(site.Racks, rack => Assert.Contains(rig.Events, each => each.Subject == $"{rack.Name}/air" && each.What == "unknown"));
    }

    /// <summary>What a meter shows at rest is what it shows 25 s after the pump stopped.</summary>
    [Fact]
    public void AMeterThatShowsALittleMoreAfterItsLookAtRestIsNotTakenForFrozen()
    {
        var rig = new Rig(With((Level, SensorKind.ReservoirLevel), (Flow, SensorKind.PumpFlow)));
        rig.Set(Flow, 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set(Flow, 30);
        rig.Set(Level, 150);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        var stopped = rig.Now.Monotonic;
        rig.Set(Flow, 0);
        rig.LeapFor(Duration.FromSeconds(20));
        Assert.Equal(stopped + Duration.FromSeconds(25), rig.Control.NextChange);
        rig.LeapFor(Duration.FromSeconds(5));
        rig.Set(Flow, 2);
        rig.Set(Level, 200);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set(Level, 150);
        rig.LeapFor(Duration.FromSeconds(30));
        Assert.Equal("known", rig.Events.Last(each => each.Subject == Flow).What);
    }

    [Fact]
    public void AMeterThatFallsSilentInAFloodTakesNothingBack()
    {
        var rig = new Rig(With((Flow, SensorKind.PumpFlow)));
        rig.Set(Flow, 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set(Flow, 30);
        rig.LeapFor(Duration.FromMinutes(3));
        rig.Silence(Flow);
        rig.LeapFor(Duration.FromMinutes(4));
        Assert.True(rig.IsOn("north/pump"));
    }

    private static MonotonicTime Unknown(Rig rig) => rig.Events.Last(each => each is { Subject: Level, Because: Still }).At.Monotonic;

    private static MonotonicTime Known(Rig rig) => rig.Events.Last(each => each is { Subject: Level, Because: Moves }).At.Monotonic;

    private const string Still = "it stood still to the last bit while water moved";
    private const string Moves = "it moves again";

    // In a flood that the meter sees and the level does not; the scan is the one from which the level is doubted.
    private static Rig Doubted()
    {
        var rig = new Rig(With((Level, SensorKind.ReservoirLevel), (Flow, SensorKind.PumpFlow)));
        rig.Set(Flow, 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set(Flow, 30);
        rig.LeapUntil(() => rig.Events.Any(each => each is { Subject: Level, Because: Still }));
        return rig;
    }

    private static void MoveFor(Rig rig, int minutes)
    {
        for (var minute = 0; minute < minutes; minute++)
        {
            rig.Set(Level, rig.Value(Level) - 0.5);
            rig.LeapFor(Duration.FromMinutes(1));
        }
    }

    private static Site With(params (string Name, SensorKind Kind)[] more)
    {
        var site = Sites.OneRack(tiers: 1);
        return site with
        {
            Sensors =
            [
                .. site.Sensors,
                .. more.Select((each, i) => site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length + i), Name = each.Name, Kind = each.Kind, PlausibleMax = 430,
                }),
            ],
        };
    }
}
