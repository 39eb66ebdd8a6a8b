using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Sensing;

/// <summary>A measured value that stands still to the last bit although something must have moved it counts as unknown; one that rests
/// does not, however long.</summary>
public class FrozenReadingTests
{
    [Fact]
    public void AReservoirLevelThatDoesNotFallWhileTheFlowIsSeenIsUnknownUntilItMovesAgain()
    {
        var rig = Rig(SensorKind.ReservoirLevel, SensorKind.PumpFlow);
        rig.Set("north/PumpFlow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/PumpFlow", 30);
        rig.LeapFor(Duration.FromSeconds(30));

        Assert.True(rig.IsOn("north/pump"));
        AssertUnknown(rig, "north/ReservoirLevel", "it stood still to the last bit while water moved");
        rig.LeapFor(Duration.FromMinutes(1));
        var alarm = rig.Alarm("north/ReservoirLevel/reading-unknown")!;
        Assert.Equal(AlarmState.Unacknowledged, alarm.State);
        Assert.Contains("stood still to the last bit", alarm.Cause, StringComparison.Ordinal);

        for (var minute = 0; minute < 6; minute++)
        {
            rig.Set("north/ReservoirLevel", 190 - minute);
            rig.LeapFor(Duration.FromMinutes(1));
        }

        Assert.Equal(("known", "it moves again"), (Last(rig, "north/ReservoirLevel").What, Last(rig, "north/ReservoirLevel").Because));

        // Of the others nothing is told: at the start each became known, and that is all.
        Assert.All(
            rig.Site.Sensors.Where(sensor => sensor.Name != "north/ReservoirLevel"),
            sensor => Assert.Single(rig.Events, each => each.Kind == EventKind.Reading && each.Subject == sensor.Name));
    }

    [Fact]
    public void OneThatMovesByABitIsBelieved()
    {
        var rig = Rig(SensorKind.ReservoirLevel, SensorKind.PumpFlow);
        rig.Set("north/PumpFlow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/PumpFlow", 30);
        rig.Set("north/ReservoirLevel", Math.BitDecrement(rig.Value("north/ReservoirLevel")));
        rig.LeapFor(Duration.FromMinutes(5));
        Assert.Equal("known", Last(rig, "north/ReservoirLevel").What);
    }

    [Fact]
    public void AFlowMeterThatSaysTheSameAtRestAndInAFloodThatIsSeenIsUnknown()
    {
        var rig = Rig(SensorKind.ReservoirLevel, SensorKind.PumpFlow);
        rig.Set("north/PumpFlow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/ReservoirLevel", 150);
        rig.LeapFor(Duration.FromSeconds(30));
        AssertUnknown(rig, "north/PumpFlow", "it stood still to the last bit while water moved");
    }

    [Fact]
    public void ALevelAloneThatDoesNotMoveIsAPumpThatGivesNothing()
    {
        var rig = Rig(SensorKind.ReservoirLevel);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("known", Last(rig, "north/ReservoirLevel").What);
    }

    [Theory]
    [InlineData(SensorKind.AirTemperature)]
    [InlineData(SensorKind.AirHumidity)]
    public void AirThatDoesNotMoveWithinHoursOfLightsThatWereSwitchedIsUnknown(SensorKind kind)
    {
        var rig = Rig(kind);
        rig.LeapUntil(() => !rig.IsOn("north/tier 1 light"));
        rig.LeapFor(Duration.FromMinutes(59));
        Assert.Equal("known", Last(rig, $"north/{kind}").What);
        rig.LeapFor(Duration.FromHours(2));
        AssertUnknown(rig, $"north/{kind}", "it has not changed by a bit although light or water moved it");
    }

    [Theory]
    [InlineData(1, 1, true)]
    [InlineData(1, 2, false)]
    [InlineData(2, 2, true)]
    [InlineData(2, 3, false)]
    [InlineData(3, 3, true)]
    [InlineData(3, 1, false)]
    public void TheAirOfATierIsMovedByItsOwnLight(int tierOfSensor, int tierOfLight, bool isUnknown)
    {
        var site = Sites.OneRack(tiers: 3).WithSchedule(plan => plan with
        {
            Lights = [.. plan.Lights.Select((lit, i) => i + 1 == tierOfLight ? lit : null)],
        });
        var rig = new Rig(site with
        {
            Sensors =
            [
                .. site.Sensors,
                site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length),
                    Name = "north/air",
                    Kind = SensorKind.AirTemperature,
                    TierNumber = tierOfSensor,
                    PlausibleMax = 50,
                },
            ],
        });
        rig.LeapFor(Duration.FromMinutes(5));
        var light = $"north/tier {tierOfLight} light";
        Assert.True(rig.IsOn(light));
        rig.LeapUntil(() => !rig.IsOn(light));
        rig.LeapFor(Duration.FromHours(3));
        Assert.Equal(isUnknown ? "unknown" : "known", Last(rig, "north/air").What);
    }

    [Theory]
    [InlineData(SensorKind.AirTemperature)]
    [InlineData(SensorKind.WaterTemperature)]
    public void WhatRestsIsBelievedHoweverLong(SensorKind kind)
    {
        var rig = Rig(kind);
        rig.Scan(new Stop("Ada", null));
        rig.LeapFor(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromDays(20));
        Assert.Equal("known", Last(rig, $"north/{kind}").What);
    }

    [Fact]
    public void WaterHasADayToMove()
    {
        var rig = Rig(SensorKind.WaterTemperature);
        rig.LeapUntil(() => !rig.IsOn("north/tier 1 light"));
        rig.LeapFor(Duration.FromHours(22));
        Assert.Equal("known", Last(rig, "north/WaterTemperature").What);
        rig.LeapFor(Duration.FromHours(5));
        AssertUnknown(rig, "north/WaterTemperature", "it has not changed by a bit although light or water moved it");
    }

    [Fact]
    public void WaterThatMovesOnceADayIsBelieved()
    {
        var rig = Rig(SensorKind.WaterTemperature);
        for (var day = 0; day < 10; day++)
        {
            rig.LeapFor(Duration.FromHours(20));
            rig.Set("north/WaterTemperature", 20 + day);
            rig.Scan();
        }

        Assert.Equal("known", Last(rig, "north/WaterTemperature").What);
    }

    [Fact]
    public void ARestartBelievesItUntilItIsFoundFrozenAgain()
    {
        var rig = Rig(SensorKind.ReservoirLevel, SensorKind.PumpFlow);
        rig.Set("north/PumpFlow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/PumpFlow", 30);
        rig.LeapFor(Duration.FromSeconds(30));
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal("known", Last(rig, "north/ReservoirLevel").What);
    }

    private static void AssertUnknown(Rig rig, string sensor, string because)
    {
        Assert.Equal("unknown", Last(rig, sensor).What);
        Assert.Equal(because, Last(rig, sensor).Because);
    }

    private static ControlEvent Last(Rig rig, string sensor) =>
        rig.Events.Last(happened => happened.Kind == EventKind.Reading && happened.Subject == sensor);

    private static Rig Rig(params SensorKind[] kinds)
    {
        var site = Sites.OneRack(tiers: 1);
        var more = kinds.Select((kind, i) => site.Sensors[0] with
        {
            Id = new SensorId(site.Sensors.Length + i),
            Name = $"north/{kind}",
            Kind = kind,
            PlausibleMax = kind switch
            {
                SensorKind.PumpFlow => 72,
                SensorKind.ReservoirLevel => 430,
                SensorKind.AirHumidity => 100,
                _ => 50,
            },
        });
        var rig = new Rig(site with { Sensors = [.. site.Sensors, .. more] });
        rig.LeapFor(Duration.FromSeconds(10));
        return rig;
    }
}
