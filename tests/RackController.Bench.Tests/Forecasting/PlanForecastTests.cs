using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Forecasting;

public sealed class PlanForecastTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);
    private static readonly Site Rack = Sites.OneRack().WithRack(rack => rack with
    {
        Tiers = [.. rack.Tiers.Select(tier => tier with { PpfdUmolPerM2S = 200 })],
    });

    // Two lamps of 80 W: none before the crop comes, one for 12 h while it stands there, none afterwards.
    [Fact]
    public void LampsFollowThePlanAndNotTheRackFile()
    {
        var forecast = PlanForecast.Of(OneTier(trays: 4), Rack, ForecastTerms.Usual);
        Assert.Equal(0, forecast.Days[1].LightsKWh, 6);
        Assert.Equal(0.080 * 12, forecast.Days[3].LightsKWh, 0.001);
        Assert.Equal(0, forecast.Days[6].LightsKWh, 6);
    }

    [Fact]
    public void WaterIsTakenWhereTraysStand()
    {
        var days = PlanForecast.Of(OneTier(trays: 4), Rack, ForecastTerms.Usual).Days;
        Assert.True(days[3].WaterUsedL > days[1].WaterUsedL);
        Assert.True(PlanForecast.Of(OneTier(trays: 2), Rack, ForecastTerms.Usual).Days[3].WaterUsedL < days[3].WaterUsedL);
    }

    [Fact]
    public void DaysThatStandAlikeTakeAlike()
    {
        var days = PlanForecast.Of(OneTier(trays: 4), Rack, ForecastTerms.Usual).Days;
        Assert.Equal((days[2].WaterUsedL, days[2].EnergyKWh), (days[4].WaterUsedL, days[4].EnergyKWh));
        Assert.Equal(PlannedDay.Of(OneTier(4), Monday.PlusDays(2)), PlannedDay.Of(OneTier(4), Monday.PlusDays(4)));
        Assert.NotEqual(PlannedDay.Of(OneTier(4), Monday.PlusDays(2)), PlannedDay.Of(OneTier(4), Monday.PlusDays(5)));
    }

    [Fact]
    public void TheSamePlanIsForetoldAlikeWhicheverCoreDoesIt()
    {
        var plan = OneTier(trays: 3);
        Assert.Equal(
            PlanForecast.Of(plan, Rack, ForecastTerms.Usual).Days.Select(day => (day.WaterUsedL, day.EnergyKWh, day.TapL, day.SaltsG)),
            PlanForecast.Of(plan, Rack, ForecastTerms.Usual).Days.Select(day => (day.WaterUsedL, day.EnergyKWh, day.TapL, day.SaltsG)));
    }

    // Trays on tier 1 from Wednesday until Saturday, under 12 h of light, in a plan of a week.
    private static Plan OneTier(int trays)
    {
        var space = GrowSpace.Of(Rack, 8);
        var tier = space.Tiers.IndexOf(space.Tiers.Single(one => one.Number == 1));
        var (from, until) = (Monday.PlusDays(2), Monday.PlusDays(5));
        var crop = new Crop
        {
            Name = "pea",
            Kind = CropKind.Microgreen,
            Soak = Duration.Zero,
            DarkDays = new WholeBounds(0, 0),
            LitStages = [],
            SeedGPerTray = 0,
            YieldGPerTray = 100,
            KeepsDays = 1,
            AirC = new Bounds(16, 22),
        };
        return new Plan
        {
            Request = new PlanRequest
            {
                Site = "cellar",
                Zone = Rack.Zone,
                Space = space,
                Today = Monday,
                Until = Monday.PlusDays(6),
                Work = new WorkDays([IsoDayOfWeek.Monday, IsoDayOfWeek.Saturday]),
                MarginPercent = 0,
                Orders = [],
                Growing = [],
            },
            Batches =
            [
                new PlannedBatch(
                    new Batch { Crop = crop, Trays = trays, Due = until, IsLive = false, Orders = [] }, "PEA-1",
                    new BatchTiming(from, [from], until), [new Stay(tier, trays, from, until)]),
            ],
            Shortfalls = [],
            Remedy = [],
            Lamps = [new LampSetting(tier, from, until, 12)],
            Quality = new PlanQuality(3, 3, 0, true),
        };
    }
}
