using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Foretelling;

public sealed class ForetellingTests
{
    private readonly Site site = Sites.OneRack();

    [Fact]
    public void ADayShowsEveryFloodAndEveryLightAtItsLocalTime()
    {
        var plan = DayPlan.Of(site, new LocalDate(2026, 3, 2));

        // Two valves open first, a second apart, so that starting currents do not add up.
        Assert.Equal(
            ["07:00:02 to 07:10:02", "13:00:02 to 13:10:02", "19:00:02 to 19:10:02"], Stretches(plan, "north/pump"));
        Assert.Equal(["06:00 to 22:00"], Stretches(plan, "north/tier 1 light"));
        Assert.Equal(Duration.FromHours(24), plan.Loads[site.LoadNamed("north/aerator").Index].Total);
    }

    [Fact]
    public void OnTheShortDayTheLightsKeepTheirHours()
    {
        // IANA time zone database: New York, 2026-03-08 02:00 EST -> 03:00 EDT.
        var plan = DayPlan.Of(site, new LocalDate(2026, 3, 8));

        Assert.Equal(["06:00 EDT to 22:00 EDT"], Stretches(plan, "north/tier 1 light"));
        Assert.Equal(Duration.FromHours(23), plan.Loads[site.LoadNamed("north/aerator").Index].Total);
    }

    [Fact]
    public void ATimeThatTheClocksSkipIsAnsweredByTheFirstMomentAfterTheGap()
    {
        var why = WhyThen.Foretell(site, new LocalDateTime(2026, 3, 8, 2, 30));

        Assert.Equal(LocalTimeFate.Skipped, why.Fate);
        Assert.Equal(Instant.FromUtc(2026, 3, 8, 7, 0), why.At);
    }

    [Fact]
    public void ATimeThatComesTwiceIsAnsweredByItsFirstComing()
    {
        var why = WhyThen.Foretell(site, new LocalDateTime(2026, 11, 1, 1, 30));

        Assert.Equal(LocalTimeFate.Twice, why.Fate);
        Assert.Equal(Instant.FromUtc(2026, 11, 1, 5, 30), why.At);
    }

    [Fact]
    public void InTheMiddleOfAFloodThePumpIsOnAndSaysWhy()
    {
        var why = WhyThen.Foretell(site, new LocalDateTime(2026, 3, 2, 7, 3));
        var pump = why.Loads[site.LoadNamed("north/pump").Index];

        Assert.Equal(SwitchState.On, pump.State);
        Assert.Empty(pump.Interlocks);
        Assert.NotEmpty(pump.Demand);
    }

    private string[] Stretches(DayPlan plan, string load) =>
    [
        .. plan.Loads[site.LoadNamed(load).Index].On
            .Select(stretch => $"{plan.Day.Clock(stretch.Start)} to {plan.Day.Clock(stretch.End)}"),
    ];
}
