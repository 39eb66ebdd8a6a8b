using NodaTime;

namespace RackController.Growing.Tests;

// The crop takes two or three days in the dark and four to six in the light, and keeps for two.
public sealed class HopelessTests
{
    private static readonly LocalDate monday = new(2026, 3, 2);

    [Fact]
    public void WhatIsWantedTooSoonIsPromisedForALaterDay()
    {
        var (_, reason, remedy) = Only(monday.PlusDays(3), IsoDayOfWeek.Monday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday);
        Assert.Contains("it takes 6 days", reason, StringComparison.Ordinal);
        Assert.StartsWith("deliver it on ", remedy, StringComparison.Ordinal);
    }

    // Sown and cut on Mondays it is a week old or two; six to nine days are asked for, of which two or more are dark.
    [Fact]
    public void WithoutALaterDayNoneIsSpokenOf()
    {
        Assert.Equal("deliver it later, and work on more days of the week", Only(monday.PlusDays(3), IsoDayOfWeek.Monday).Remedy);
        Assert.Equal("work on Wednesday or Thursday as well", Only(monday.PlusDays(14), IsoDayOfWeek.Monday).Remedy);
    }

    // Soaked seed needs somebody on the evening before as well: with Mondays alone, two more days of work lack.
    [Fact]
    public void WhereOneMoreDayOfWorkIsNotEnoughThatIsSaid()
    {
        var order = new Order("inn", SomeCrop.Soaked(8), new LiveTrays(1), monday.PlusDays(14), 1);
        var request = SomeRequest.On(monday, IsoDayOfWeek.Monday) with { Orders = [order] };
        Assert.Equal("work on more days of the week; one more day of work is not enough", Hopeless.Of(request).Single().Remedy);
    }

    private static (Order Order, string Reason, string Remedy) Only(LocalDate due, params IsoDayOfWeek[] work)
    {
        var order = new Order("inn", SomeCrop.Soaked(0), new LiveTrays(1), due, 1);
        return Hopeless.Of(SomeRequest.On(monday, work) with { Orders = [order] }).Single();
    }
}
