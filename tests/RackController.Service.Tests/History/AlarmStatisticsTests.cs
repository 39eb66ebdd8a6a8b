using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class AlarmStatisticsTests
{
    private static readonly Instant noon = Happenings.Noon;
    private static readonly HistorySpan days = new(noon - Duration.FromDays(3), noon);

    [Fact]
    public void WhatCallsAPersonIsCountedByTheDayAndWhatBecomesOfItIsNot()
    {
        var found = Of(Call(-50, "a"), Became(-49.9, "a", AlarmState.Acknowledged), Call(-26, "b"), Call(-25.9, "b"), Call(-1, "a"));

        Assert.Equal([0, 1, 2, 1], found.PerDay.Select(day => day.Count));
        Assert.Equal(4, found.Count);
    }

    [Fact]
    public void ThreeWithinAMinuteAreChatterAndTwoAreNot()
    {
        const double Second = 1 / 3600.0;
        var found = Of(
            Call(-2, "a"), Call(-2 + 30 * Second, "a"), Call(-2 + 60 * Second, "a"),
            Call(-1, "b"), Call(-1 + 30 * Second, "b"), Call(-1 + 61 * Second, "b"));

        Assert.Equal(new AlarmCount("a", 1), Assert.Single(found.Chattering));
    }

    [Fact]
    public void MoreThanTenWithinTenMinutesAreAFlood()
    {
        var ten = Enumerable.Range(0, 10).Select(minute => Call(-5 + minute / 60.0, $"{minute}")).ToArray();

        Assert.Equal((10, 0), (Of(ten).MostInTenMinutes, Of(ten).Floods));
        Assert.Equal((11, 1), (Of([.. ten, Call(-5 + 10 / 60.0, "x")]).MostInTenMinutes, Of([.. ten, Call(-5 + 10 / 60.0, "x")]).Floods));
    }

    [Fact]
    public void WhatWasNotNormalForMoreThanADayStands()
    {
        var found = Of(
            Call(-60, "a"), Became(-59, "a", AlarmState.Acknowledged), Call(-50, "b"), Became(-30, "b", AlarmState.Normal), Call(-20, "c"));

        Assert.Equal(("a", noon - Duration.FromHours(60)), Assert.Single(found.Standing));
    }

    [Fact]
    public void TheMostFrequentStandFirstAndEveryPriorityIsCounted()
    {
        var found = Of(Call(-3, "low"), Call(-2, "low"), Call(-1, "high"), Call(-0.5, "gone"));

        Assert.Equal(new AlarmCount("low", 2), found.MostFrequent[0]);
        Assert.Equal([0, 1, 0, 2], found.ByPriority.Select(each => each.Count));
    }

    private static AlarmStatistics Of(params ControlEvent[] events) => AlarmStatistics.Of(
        events, days, DateTimeZone.Utc, key => key switch { "low" => AlarmPriority.Low, "high" => AlarmPriority.High, _ => null });

    private static ControlEvent Call(double hours, string key) => Became(hours, key, AlarmState.Unacknowledged);

    private static ControlEvent Became(double hours, string key, AlarmState state) =>
        MadeUpJournal.Event(noon + Duration.FromSeconds(Math.Round(hours * 3600)), EventKind.Alarm, key, state.InWords());
}
