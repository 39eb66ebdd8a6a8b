using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Growing.Tests;

public sealed class UpkeepStatusTests
{
    private static readonly DateTimeZone zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly Rack rack = Sites.OneRack().Racks[0];
    private static readonly Instant since = Instant.FromUtc(2026, 5, 3, 16, 0);

    private static readonly Gen<UpkeepInterval> someInterval =
        from floods in Gen.Int[1, 500].Nullable(0.3)
        from days in Gen.Int[1, 400].Nullable(0.3)
        from hours in Gen.Int[1, 1000].Nullable(0.3)
        where floods is not null || days is not null || hours is not null
        select new UpkeepInterval(floods, days, hours is { } h ? Duration.FromHours(h) : null);

    private static readonly Gen<(int Floods, double Hours, double Days)> someUse =
        Gen.Select(Gen.Int[0, 900], Gen.Double[0, 900], Gen.Double[0, 900]);

    // By hand: 220 of 200 is 1.1, and 20 days of 60 a third.
    [Fact]
    public void WhatComesFirstMakesItDue()
    {
        var status = Judge(new UpkeepInterval(200, 60, null), floods: 220, days: 20);

        Assert.True(status is { IsDue: true, IsOverdue: false, First: { Unit: UpkeepUnit.Floods, Share: 1.1 } });
        Assert.Equal("220 of 200 floods, 20 of 60 days, since 3 May 2026", UpkeepWords.Why(status, zone));
    }

    [Theory]
    [InlineData(199, 59, false)]
    [InlineData(200, 0, true)]
    [InlineData(0, 60, true)]
    public void ItIsDueWithTheLastFloodOrDayAndNotBefore(int floods, int days, bool isDue) =>
        Assert.Equal(isDue, Judge(new UpkeepInterval(200, 60, null), floods, days: days).IsDue);

    [Theory]
    [InlineData(249, false)]
    [InlineData(250, true)]
    public void AQuarterOfItsIntervalLaterItIsOverdue(int floods, bool isOverdue) =>
        Assert.Equal(isOverdue, Judge(new UpkeepInterval(200, null, null), floods).IsOverdue);

    // The clocks of New York went forward on 8 March 2026 (tz database): that day had 23 hours, and was one day all the same.
    [Fact]
    public void DaysAreThoseOfTheCalendar()
    {
        var before = new LocalDateTime(2026, 3, 7, 23, 30).InZoneLeniently(zone).ToInstant();
        var after = new LocalDateTime(2026, 3, 9, 0, 30).InZoneLeniently(zone).ToInstant();

        var status = UpkeepStatus.Of(
            rack, UpkeepWork.Floats, new UpkeepInterval(null, 2, null), new UpkeepUse(before, true, 0, Duration.Zero), after, zone);

        Assert.Equal(2, status.First.Count);
    }

    [Fact]
    public void WhatWasNeverPutDownIsCountedFromTheBeginningOfTheRecordAndSaysSo()
    {
        var use = new UpkeepUse(since, WasDone: false, 12, Duration.FromHours(1.9));
        var status = UpkeepStatus.Of(
            rack, UpkeepWork.Pump, new UpkeepInterval(null, null, Duration.FromHours(200)), use, since + Duration.FromDays(4), zone);

        Assert.Equal("1 of 200 h of the pump, since the record began on 3 May 2026; never put down as done", UpkeepWords.Why(status, zone));
    }

    [Fact]
    public void ItIsExpectedWhenTheUseSoFarGoesOn()
    {
        var now = since + Duration.FromDays(10);

        // By hand: 30 floods in 10 days leave 20, which is 6.67 days; 10 of 60 days leave 50.
        var status = Judge(new UpkeepInterval(50, 60, null), floods: 30, days: 10);
        Assert.Equal(20 / 3.0, (status.ExpectedAt(now)!.Value - now).TotalDays, 6);

        Assert.Null(Judge(new UpkeepInterval(50, 60, null), floods: 50, days: 10).ExpectedAt(now));
        Assert.Null(Judge(new UpkeepInterval(50, null, null), floods: 0, days: 10).ExpectedAt(now));
    }

    [Fact]
    public void MoreUseNeverMovesItAway() => Gen.Select(someInterval, someUse, someUse).Sample((every, use, more) =>
    {
        var (before, after) = (Judge(every, use), Judge(every, (use.Floods + more.Floods, use.Hours + more.Hours, use.Days + more.Days)));
        return after.First.Share >= before.First.Share && (!before.IsDue || after.IsDue) && (!before.IsOverdue || after.IsOverdue);
    });

    [Fact]
    public void MoreFloodsNeverPutOffWhenItIsExpected() => Gen.Select(someInterval, someUse, Gen.Int[0, 900]).Sample((every, use, more) =>
    {
        var now = since + Duration.FromDays(use.Days);
        var (before, after) = (Judge(every, use), Judge(every, use with { Floods = use.Floods + more }));
        return before.ExpectedAt(now) is not { } expected || after.IsDue || after.ExpectedAt(now) <= expected;
    });

    [Fact]
    public void DoneNowIsDueAgainOnlyAfterAWholeInterval() => someInterval.Sample(every =>
        Judge(every, (0, 0, 0)) is { IsDue: false, First.Share: 0 });

    [Fact]
    public void ItIsDueJustWhenOneOfItsCountsIs() => Gen.Select(someInterval, someUse).Sample((every, use) =>
        Judge(every, use).IsDue == (use.Floods >= every.Floods || Judge(every, use).Counts.Any(count => count.Unit == UpkeepUnit.Days
            && count.Count >= every.Days) || Duration.FromHours(use.Hours) >= every.PumpOn));

    [Fact]
    public void AClockThatWasSetBackMakesNothingDue()
    {
        var use = new UpkeepUse(since, WasDone: true, 0, Duration.Zero);
        var status = UpkeepStatus.Of(
            rack, UpkeepWork.Floats, new UpkeepInterval(null, 30, null), use, since - Duration.FromDays(400), zone);

        Assert.Equal(0, status.First.Count);
        Assert.Null(status.ExpectedAt(since - Duration.FromDays(400)));
    }

    private static UpkeepStatus Judge(UpkeepInterval every, (int Floods, double Hours, double Days) use) => UpkeepStatus.Of(
        rack, UpkeepWork.Screen, every, new UpkeepUse(since, WasDone: true, use.Floods, Duration.FromHours(use.Hours)),
        since + Duration.FromDays(use.Days), zone);

    private static UpkeepStatus Judge(UpkeepInterval every, int floods, double days = 0) => Judge(every, (floods, 0, days));
}
