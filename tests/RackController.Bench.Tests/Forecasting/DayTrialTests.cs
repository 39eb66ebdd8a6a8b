using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Forecasting;

public sealed class DayTrialTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);
    private static readonly Site Rack = Sites.OneRack();

    // Energy is real power times time (arithmetic), here by the nameplates: two lights of 80 W for 16 h.
    [Fact]
    public void LampsDrawTheirPowerForAsLongAsTheyAreLit() => Assert.Equal(2 * 0.080 * 16, Run(Rack).LightsKWh, 0.001);

    // Aerator 5 W and fan 12 W all day; pump 45 W and two valves of 6 W for three floods of 10 min. A load may be checked for a moment.
    [Fact]
    public void AllElseDrawsItsPowerForAsLongAsItRuns() => Assert.Equal(0.017 * 24 + 0.057 * 0.5, Run(Rack).OthersKWh, 0.003);

    // As the headroom of the circuit has it, by nameplates: 234 W on 120 V.
    [Fact]
    public void TheMostThatACircuitCarriesIsTheSumOfWhatRunsInAFlood() =>
        Assert.Equal(CircuitHeadroom.Of(Rack, Rack.Circuits[0]).TogetherA, Run(Rack).PeakA.Single(), 0.01);

    [Fact]
    public void ADayBeforeItWouldChangeLittle()
    {
        var run = Rehearsal.UpTo(Rack, Monday.PlusDays(3).AtStartOfDayInZone(Rack.Zone).ToInstant());
        var beforeL = run.Plant.Racks[0].WaterUsedL;
        while (run.Step(MonotonicTime.Zero + Duration.FromDays(3)))
        {
            Assert.True(run.Now.Elapsed <= Duration.FromDays(3));
        }

        var laterL = run.Plant.Racks[0].WaterUsedL - beforeL;
        Assert.InRange(Run(Rack).Racks[0].WaterL, 0.97 * laterL, 1.03 * laterL);
    }

    // The week that a change of the rack file is tried for is another run, by another code: a seventh of it is a day.
    [Fact]
    public void ASeventhOfAWeekAheadIsADay()
    {
        var week = WeekAhead.Of(Rack, Monday.AtStartOfDayInZone(Rack.Zone).ToInstant(), _ => { });
        var day = Run(Rack);
        Assert.InRange(day.Racks[0].WaterL, 0.97 * week.Racks[0].WaterUsedL / 7, 1.03 * week.Racks[0].WaterUsedL / 7);
        Assert.Equal(week.Circuits[0].EnergyKWh / 7, day.LightsKWh + day.OthersKWh, 0.005);
        Assert.Equal(week.Circuits[0].PeakA, day.PeakA[0], 0.001);
    }

    [Theory]
    [InlineData(6, 10)]
    [InlineData(10, 14)]
    [InlineData(14, 20)]
    public void LongerLightNeverTakesLessWaterOrPower(int fewerH, int moreH)
    {
        var (shorter, longer) = (Run(Lit(fewerH)), Run(Lit(moreH)));
        Assert.True(longer.Racks[0].WaterL > shorter.Racks[0].WaterL);
        Assert.True(longer.LightsKWh > shorter.LightsKWh);
    }

    [Fact]
    public void ATierWithNothingOnItTakesLessWaterThanOneWithTrays()
    {
        var bare = Rack.WithRack(rack => rack with
        {
            Tiers = [.. rack.Tiers.Select(tier => tier with
            {
                Tray = tier.Tray with { Contents = tier.Tray.Contents with { InsertTrays = 0, DisplacedShare = 0 } },
            })],
        });
        var (empty, full) = (Run(bare).Racks[0], Run(Rack).Racks[0]);
        Assert.Equal(0, empty.CropSaltsG);
        Assert.True(empty.WaterL < full.WaterL / 2);
        Assert.True(full.CropSaltsG > 0);
    }

    private static Site Lit(int hours) => Rack.WithSchedule(schedule => schedule with
    {
        Lights = [.. schedule.Lights.Select(light => light! with { Length = Duration.FromHours(hours) })],
    });

    private static DayUse Run(Site site) => DayTrial.Run(site, Monday, ForecastTerms.Usual);
}
