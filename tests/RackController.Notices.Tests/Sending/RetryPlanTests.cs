using NodaTime;

namespace RackController.Notices.Tests;

public sealed class RetryPlanTests
{
    [Fact]
    public void PausesDoubleFromAMinuteToAnHour() => Assert.Equal(
        [1, 2, 4, 8, 16, 32, 60, 60],
        Enumerable.Range(1, 8).Select(tries => (int)RetryPlan.PauseAfter(tries, null).TotalMinutes));

    [Theory]
    [InlineData(1, 1)]
    [InlineData(600, 10)]
    [InlineData(86_400, 60)]
    public void WhoAsksToBeLeftAloneIsForAnHourAtMost(int askedS, int minutes) =>
        Assert.Equal(Duration.FromMinutes(minutes), RetryPlan.PauseAfter(1, Duration.FromSeconds(askedS)));
}
