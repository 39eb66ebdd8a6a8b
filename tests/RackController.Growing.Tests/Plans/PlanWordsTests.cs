using NodaTime;

namespace RackController.Growing.Tests;

public sealed class PlanWordsTests
{
    private static readonly LocalDate monday = new(2026, 3, 2);

    [Theory]
    [InlineData(0, 0, "nothing is due within the plan")]
    [InlineData(1, 0, "the one delivery is met")]
    [InlineData(1, 1, "the one delivery is not met; no plan meets it")]
    [InlineData(5, 0, "all 5 deliveries are met")]
    [InlineData(5, 2, "3 of 5 deliveries are met; no plan meets more")]
    [InlineData(5, 4, "1 of 5 deliveries is met; no plan meets more")]
    [InlineData(5, 5, "none of 5 deliveries is met; no plan meets more")]
    public void WhatIsMetIsSaidAsAPersonSaysIt(int all, int missed, string words) =>
        Assert.Contains(("orders", words), PlanWords.Facts(Plan(all, missed)));

    [Theory]
    [InlineData(0, 0, false)]
    [InlineData(2, 1, false)]
    [InlineData(2, 0, true)]
    public void APlanInWhichNothingIsDueMeetsNothing(int all, int missed, bool isMet) =>
        Assert.Equal(isMet, Plan(all, missed).MeetsWhatIsDue);

    private static Plan Plan(int all, int missed)
    {
        var orders = Enumerable.Range(1, all)
            .Select(line => new Order("inn", SomeCrop.Soaked(0), new LiveTrays(1), monday.PlusDays(9), line)).ToList();
        return new Plan
        {
            Request = SomeRequest.On(monday, IsoDayOfWeek.Monday) with { Orders = [.. orders] },
            Batches = [],
            Shortfalls = [.. orders.Take(missed).Select(order => new Shortfall(order, "tiers are full", "1 more tier"))],
            Remedy = [],
            Lamps = [],
            Quality = new PlanQuality(0, 0, 0, true),
        };
    }
}
