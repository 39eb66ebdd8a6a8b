using NodaTime;
using RackController.Testing;

namespace RackController.Growing.Tests;

public sealed class ForecastTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);

    // 700 W for 16 h are 11.2 kWh (arithmetic of energy = real power x time); at 0.25 that costs 2.80, 100 L at 4 a cubic metre 0.40, and
    // 50 g at 10 a kilogram 0.50.
    [Fact]
    public void PricesAreMultipliedByWhatIsTaken() => Assert.Equal(3.70, new Prices("crowns", 0.25, 4, 10).Of(11.2, 100, 50), 9);

    [Fact]
    public void TheTotalIsTheSumOfTheDays()
    {
        var forecast = Some(new Prices("crowns", 0.25, 4, 10));
        Assert.Equal(28 * 3.0, forecast.Total.WaterUsedL, 9);
        Assert.Equal(28 * 6.0, forecast.Total.EnergyKWh, 9);
        Assert.Equal(forecast.Days.Sum(day => day.Cost), forecast.Total.Cost);
        Assert.Equal(2.5, forecast.Total.PeakA.Single());
    }

    [Fact]
    public void WithoutPricesNothingHasACost()
    {
        var forecast = Some(null);
        Assert.Null(forecast.Total.Cost);
        Assert.All(forecast.Days, day => Assert.Null(day.Cost));
        Assert.Contains("with `prices:` in the orders file", ForecastWords.Facts(forecast)[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void HarvestsStandOnTheirDays()
    {
        var forecast = Some(null);
        var day = Assert.Single(forecast.Days, day => !day.Harvest.IsEmpty);
        Assert.Equal(Monday.PlusDays(10), day.Date);
        Assert.Equal("2 trays of pea cut, 200 g", day.Harvest.Single().Words);
        Assert.Equal(day.Harvest.Single(), forecast.Total.Harvest.Single());
    }

    // 140 L at 3 L a day; a flood lends 50 L and 20 L have to stay: 24 days last, and the solution is changed every 14.
    [Fact]
    public void WhatReservoirsAskOfPeopleStandsAmongTheTasks()
    {
        var forecast = Some(null);
        var change = new LocalDate(2026, 3, 16);
        Assert.Equal(24, forecast.Racks[0].LastsDays);
        Assert.Equal((null, change, null), (forecast.Racks[0].NextTopUp, forecast.Racks[0].NextChange, forecast.Racks[0].NextFlush));
        var task = PlanTasks.With(SomePlan(), forecast).Single(task => task.Kind == PlanTaskKind.Reservoir && task.Date == change);
        Assert.Equal("change the reservoir of north: 140 L of water and about 63 g of salts, by the meter", task.Words);
    }

    [Fact]
    public void WhatLeavesAliveIsNotWeighed()
    {
        var crop = SomeCrop.Soaked(8);
        var both = Harvested.Together([new Harvested(crop.Name, 3, 0, 0), new Harvested(crop.Name, 0, 2, 200)]).Single();
        Assert.Equal("2 trays of pea cut, 200 g, 3 trays of pea", both.Words);
    }

    private static Forecast Some(Prices? prices) => Forecast.Of(
        SomePlan(), Sites.OneRack(), ForecastTerms.Usual with { Prices = prices }, [20],
        [.. Enumerable.Repeat(new DayUse([new RackDayUse(3, 1, 50)], 4, 2, [2.5]), 28)]);

    private static Plan SomePlan()
    {
        var request = SomeRequest.On(Monday, IsoDayOfWeek.Monday, IsoDayOfWeek.Thursday);
        var batch = SomeCrop.Batch(SomeCrop.Soaked(8), Monday.PlusDays(10));
        var timing = new BatchTiming(Monday.PlusDays(3), [Monday.PlusDays(6)], Monday.PlusDays(10));
        return new Plan
        {
            Request = request,
            Batches = [new PlannedBatch(batch, "PEA-1", timing, [])],
            Shortfalls = [],
            Remedy = [],
            Lamps = [],
            Quality = new PlanQuality(0, 0, 0, true),
        };
    }
}
