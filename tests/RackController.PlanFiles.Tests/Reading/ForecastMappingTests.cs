using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

public sealed class ForecastMappingTests
{
    private const string OneOrder = "dated: [{ customer: inn, crop: radish, weight: 300 g, on: 2026-03-20 }]\n";

    [Fact]
    public void WhatIsNotSaidIsCommonPractice() => Assert.Equal(ForecastTerms.Usual, Orders.Read(OneOrder).Season!.Forecast);

    [Fact]
    public void AnEmptyForecastSaysNothingElse() =>
        Assert.Equal(ForecastTerms.Usual, Orders.Read(OneOrder + "forecast: { solution: { target: 1 mS/cm } }").Season!.Forecast);

    [Fact]
    public void WhatIsSaidIsRead() => Assert.Equal(
        new ForecastTerms
        {
            TargetMsPerCm = 1.2,
            TapMsPerCm = 0.45,
            ChangeEveryDays = 10,
            FlushEveryDays = 30,
            Changed = new LocalDate(2026, 2, 20),
            Flushed = new LocalDate(2026, 2, 10),
            TrayKg = 2.5,
            Prices = new Prices("crowns", 0.28, 4, 9),
        },
        Orders.Read(OneOrder + """
            forecast:
              solution:
                { target: 1.2 dS/m, tap: 450 uS/cm, change-every: 10 d, flush-every: 30 d, changed: 2026-02-20, flushed: 2026-02-10 }
              tray-weight: 2500 g
              prices: { currency: crowns, electricity-per-kwh: 0.28, water-per-m3: 4, salts-per-kg: 9 }
            """).Season!.Forecast);

    [Theory]
    [InlineData("solution: { target: 0.2 mS/cm }", "the solution would be weaker than the water that it is mixed with")]
    [InlineData("solution: { target: 4 mS/cm }", "outside 0 mS/cm to 3 mS/cm")]
    [InlineData("solution: { change-every: 7 to 14 d }", "`change-every` is no number of days from 1")]
    [InlineData("solution: { flush-every: 0 d }", "`flush-every` is no number of days from 1")]
    [InlineData("solution: { changed: 2026-03-03 }", "`changed` is after the plan's first day, 2026-03-02")]
    [InlineData("solution: { flushed: 2026-03-09 }", "`flushed` is after the plan's first day, 2026-03-02")]
    [InlineData("tray-weight: 3 L", "a volume")]
    [InlineData("prices: { electricity-per-kwh: 0.28 }", "currency")]
    [InlineData("prices: { currency: crowns, electricity-per-kwh: -1 }", "out of range")]
    [InlineData("price: { currency: crowns }", "did you mean `prices`")]
    public void AMistakeIsNamed(string forecast, string complaint) => Assert.Contains(
        Orders.Complaints($"{OneOrder}forecast: {{ {forecast} }}"), one => one.Contains(complaint, StringComparison.Ordinal));
}
