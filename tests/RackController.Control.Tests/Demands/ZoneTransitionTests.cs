using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>The bundled time zone database and the schedule, held against the transitions of the IANA database.</summary>
public class ZoneTransitionTests
{
    [Theory]
    [MemberData(nameof(ZoneTransitions.Each), MemberType = typeof(ZoneTransitions))]
    public void TheBundledDatabaseHasTheTransition(int number)
    {
        var expected = ZoneTransitions.List[number];
        var before = expected.DateTimeZone.GetZoneInterval(expected.At - Duration.Epsilon);
        var after = expected.DateTimeZone.GetZoneInterval(expected.At);
        Assert.Equal(expected.At, before.End);
        Assert.Equal(expected.Before, before.IsoLocalEnd);
        Assert.Equal(expected.After, after.IsoLocalStart);
    }

    [Fact]
    public void TheBundledDatabaseHasNoOtherTransitions()
    {
        var (from, to) = (Instant.FromUtc(2026, 1, 1, 0, 0), Instant.FromUtc(2028, 1, 1, 0, 0));
        foreach (var zone in ZoneTransitions.List.GroupBy(each => each.Zone))
        {
            var ends = DateTimeZoneProviders.Tzdb[zone.Key].GetZoneIntervals(from, to).SkipLast(1).Select(each => each.End);
            Assert.Equal(zone.Select(each => each.At), ends);
        }
    }

    [Theory]
    [MemberData(nameof(ZoneTransitions.Each), MemberType = typeof(ZoneTransitions))]
    public void ASkippedTimeHappensAtTheFirstMomentAfterTheGapAndARepeatedOneTheFirstTime(int number)
    {
        var change = ZoneTransitions.List[number];
        var expected = change.IsGap
            ? change.At
            : change.At - (change.Before.TimeOfDay - change.InsideTime).ToDuration();
        Assert.Equal(expected, change.DateTimeZone.Happens(change.After.Date, change.InsideTime));
    }

    [Theory]
    [MemberData(nameof(ZoneTransitions.Each), MemberType = typeof(ZoneTransitions))]
    public void AFloodInsideTheChangeIsDueOnceThatDay(int number)
    {
        var change = ZoneTransitions.List[number];
        var calendar = CalendarOf(change, new FloodsAt([change.InsideTime]));
        var (zone, day) = (change.DateTimeZone, change.After.Date);
        var due = Due(
            calendar,
            zone.AtStartOfDay(day.PlusDays(-3)).ToInstant() - Duration.Epsilon,
            zone.AtStartOfDay(day.PlusDays(4)).ToInstant() - Duration.Epsilon);
        Assert.Equal(
            Enumerable.Range(-3, 7).Select(days => day.PlusDays(days)), due.Select(each => each.InZone(zone).Date));
        Assert.Single(due, zone.Happens(day, change.InsideTime));
    }

    [Theory]
    [MemberData(nameof(ZoneTransitions.Each), MemberType = typeof(ZoneTransitions))]
    public void LightThatLastsThroughTheChangeLastsItsLengthInElapsedTime(int number)
    {
        var change = ZoneTransitions.List[number];
        foreach (var start in new[] { new LocalTime(23, 0), new LocalTime(0, 30), change.InsideTime })
        {
            var calendar = new LightCalendar(
                change.DateTimeZone, new Photoperiod(start, Duration.FromHours(16)), Duration.Zero);
            var window = calendar.At(change.At + Duration.FromMinutes(1));
            Assert.True(window.IsLit);
            Assert.Equal(Duration.FromHours(16), window.Until - window.From);
            var day = start == new LocalTime(23, 0) ? change.After.Date.PlusDays(-1) : change.After.Date;
            Assert.Equal(change.DateTimeZone.Happens(day, start), window.From);
        }
    }

    [Theory]
    [MemberData(nameof(ZoneTransitions.Each), MemberType = typeof(ZoneTransitions))]
    public void FloodsEveryHalfHourStayHalfAnHourApartThroughTheChange(int number)
    {
        // Two floods never come closer; where the day is longer than the window, the last pause is longer.
        var change = ZoneTransitions.List[number];
        var calendar = CalendarOf(
            change, new FloodsEvery(Duration.FromMinutes(30), new LocalTime(20, 0), Duration.FromHours(24)));
        var due = Due(calendar, change.At - Duration.FromDays(2), change.At + Duration.FromDays(2));
        var pauses = due.Zip(due.Skip(1), (a, b) => b - a).Distinct().Order().ToList();
        Assert.Equal(Duration.FromMinutes(30), pauses[0]);
        Assert.All(pauses, pause => Assert.True(pause <= Duration.FromMinutes(change.IsGap ? 30 : 90)));
    }

    [Theory]
    [MemberData(nameof(ZoneTransitions.Each), MemberType = typeof(ZoneTransitions))]
    public void ARackThatLivesThroughTheChangeFloodsAndLightsAsPlanned(int number)
    {
        var change = ZoneTransitions.List[number];
        var (zone, day) = (change.DateTimeZone, change.After.Date);
        var light = new Photoperiod(new LocalTime(20, 0), Duration.FromHours(10));
        var site = (Sites.OneRack() with { Zone = zone }).WithSchedule(schedule => schedule with
        {
            Lights = [light, light],
            Floods = schedule.Floods with { Times = new FloodsAt([change.InsideTime, new LocalTime(12, 0)]) },
        });
        var rig = new DemandRig(site, zone.Happens(day.PlusDays(-1), new LocalTime(18, 0)));
        rig.RunUntil(zone.Happens(day.PlusDays(1), new LocalTime(11, 0)));

        Assert.Equal(
            [
                zone.Happens(day, change.InsideTime),
                zone.Happens(day, new LocalTime(12, 0)),
                zone.Happens(day.PlusDays(1), change.InsideTime),
            ],
            rig.When(FloodEvent.Due));
        Assert.Equal(3, rig.When(FloodEvent.Filling).Count());
        Assert.Equal(
            [zone.Happens(day.PlusDays(-1), light.Start), zone.Happens(day, light.Start)],
            rig.Comes("north/tier 2 light", SwitchState.On));
        Assert.Equal(
            rig.Comes("north/tier 2 light", SwitchState.On).Select(on => on + light.Length),
            rig.Comes("north/tier 2 light", SwitchState.Off));
    }

    private static FloodCalendar CalendarOf(ZoneTransition change, FloodTimes times) => new(
        new RackSchedule
        {
            Lights = [],
            Floods = new FloodPlan(
                times, new FillForTime(Duration.FromMinutes(5)), Duration.Zero, Duration.Zero, MissedFloods.Skip),
            Runs = [],
        },
        change.DateTimeZone);

    private static List<Instant> Due(FloodCalendar calendar, Instant after, Instant upTo)
    {
        var due = new List<Instant>();
        for (var next = calendar.NextAfter(after); next <= upTo; next = calendar.NextAfter(next))
        {
            due.Add(next);
        }

        return due;
    }
}
