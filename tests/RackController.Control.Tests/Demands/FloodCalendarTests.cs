using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Demands;

public class FloodCalendarTests
{
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];
    private static readonly Photoperiod SixToTen = new(new LocalTime(6, 0), Duration.FromHours(16));

    [Fact]
    public void FloodsAtTimesAreDueAtThem()
    {
        var calendar = Of(new FloodsAt([new LocalTime(7, 0), new LocalTime(13, 0), new LocalTime(19, 0)]));
        Assert.Equal(
            ["10T07:00", "10T13:00", "10T19:00", "11T07:00"], Due(calendar, Instant.FromUtc(2026, 1, 10, 0, 0), 4));
        Assert.Equal(3, calendar.PerDay);
        Assert.Equal(Duration.FromHours(8), calendar.MeanSpacing);
    }

    [Fact]
    public void ACalendarWithoutFloodsHasNoneBeforeNorAfterNorBetween()
    {
        var (calendar, noon) = (Of(new NoFloods()), Instant.FromUtc(2026, 1, 10, 12, 0));
        Assert.True(calendar.IsEmpty);
        Assert.Equal(Instant.MinValue, calendar.LatestUpTo(noon));
        Assert.Equal(Instant.MaxValue, calendar.NextAfter(noon));
        Assert.Equal(0, calendar.CountBetween(noon, noon + Duration.FromDays(3)));
    }

    [Fact]
    public void NoFloodBeginsAtTheEndOfItsWindow() =>
        Assert.Equal(
            ["10T06:00", "10T08:00", "10T10:00", "11T06:00"],
            Due(
                Of(new FloodsEvery(Duration.FromHours(2), new LocalTime(6, 0), Duration.FromHours(6))),
                Instant.FromUtc(2026, 1, 10, 0, 0), 4));

    [Fact]
    public void FloodsOverThePhotoperiodBeginAtFirstLightAndStopBeforeTheLastGoesOff()
    {
        // From 06:00 to 22:30, when the light of the second tier goes off: 16.5 h over 3 is 5.5 h.
        var calendar = Of(new FloodsOverPhotoperiod(3), Duration.FromMinutes(30), SixToTen, SixToTen);
        Assert.Equal(
            ["10T06:00", "10T11:30", "10T17:00", "11T06:00"], Due(calendar, Instant.FromUtc(2026, 1, 10, 0, 0), 4));
    }

    [Fact]
    public void FloodsOverAnEndlessPhotoperiodSpreadOverTheDay()
    {
        var calendar = Of(
            new FloodsOverPhotoperiod(4), Duration.Zero, new Photoperiod(new LocalTime(6, 0), Duration.FromHours(24)));
        Assert.Equal(
            ["10T06:00", "10T12:00", "10T18:00", "11T00:00", "11T06:00"],
            Due(calendar, Instant.FromUtc(2026, 1, 10, 0, 0), 5));
    }

    [Fact]
    public void TimesThatFallTogetherInAGapAreOneFlood()
    {
        // 01:00 to 02:00 is skipped in London on 29 March 2026.
        var calendar = Of(new FloodsAt([new LocalTime(1, 10), new LocalTime(1, 40), new LocalTime(2, 0)]));
        Assert.Equal(["29T02:00", "30T01:10"], Due(calendar, Instant.FromUtc(2026, 3, 29, 0, 30), 2));
    }

    [Fact]
    public void ASeriesEndsWhereTheNextDaysBegins()
    {
        // From 06:00 GMT every 5 h for 24 h; the next series begins 23 h later, at 06:00 BST, before the fifth is 5 h old.
        var calendar = Of(new FloodsEvery(Duration.FromHours(5), new LocalTime(6, 0), Duration.FromHours(24)));
        Assert.Equal(
            ["28T06:00", "28T11:00", "28T16:00", "28T21:00", "29T03:00", "29T06:00"],
            Due(calendar, Instant.FromUtc(2026, 3, 28, 5, 0), 6));
    }

    [Fact]
    public void WhereTwoSeriesMeetTheirCommonTimeIsOneFlood()
    {
        // Every hour for 24 h, but the next series begins after 23 h.
        var calendar = Of(new FloodsEvery(Duration.FromHours(1), new LocalTime(6, 0), Duration.FromHours(24)));
        var start = Instant.FromUtc(2026, 3, 28, 6, 0);
        Assert.Equal(24, calendar.CountBetween(start - Duration.Epsilon, start + Duration.FromHours(23)));
    }

    [Fact]
    public void ARackAtRestHasNoFloods()
    {
        var calendar = Of(new NoFloods());
        Assert.True(calendar.IsEmpty);
        Assert.Equal(Instant.MaxValue, calendar.NextAfter(Instant.FromUtc(2026, 1, 1, 0, 0)));
    }

    [Fact]
    public void DueTimesFollowEachOtherAndAreFoundFromBothSides() => Gens.Schedules.Sample(made =>
    {
        var calendar = Of(made);
        var due = calendar.NextAfter(made.Around);
        for (var number = 0; number < 20; number++)
        {
            var next = calendar.NextAfter(due);
            if (next <= due
                || calendar.LatestUpTo(next) != next
                || calendar.LatestUpTo(next - Duration.Epsilon) != due
                || calendar.CountBetween(due, next) != 1
                || due.ToUnixTimeTicks() % NodaConstants.TicksPerSecond != 0)
            {
                return false;
            }

            due = next;
        }

        return true;
    });

    [Fact]
    public void ADayHasNoMoreFloodsThanItsPlanSays() => Gens.Schedules.Sample(made =>
    {
        // A local day holds the tail of yesterday's series and the head of today's; together never more than one series
        // and, on a day of 25 hours, what one hour more holds.
        var calendar = Of(made);
        var count = calendar.CountBetween(made.Around, made.Around + Duration.FromDays(2));
        return count > 0 && count <= 2 * calendar.PerDay + (int)(Duration.FromHours(1) / Shortest(calendar, made.Around)) + 1;
    });

    [Theory]
    [InlineData(9, 59, 7)]
    [InlineData(10, 0, 7)]
    [InlineData(10, 1, 13)]
    public void HalfwayBetweenTwoDueTimesTheEarlierIsTheNearest(int hour, int minute, int nearest) => Assert.Equal(
        Instant.FromUtc(2026, 1, 10, nearest, 0),
        Of(new FloodsAt([new LocalTime(7, 0), new LocalTime(13, 0)])).Nearest(Instant.FromUtc(2026, 1, 10, hour, minute)));

    [Fact]
    public void TheNearestDueTimeIsOneOfItsNeighbours() => Gens.Schedules.Sample(made =>
    {
        var calendar = Of(made);
        var nearest = calendar.Nearest(made.Around);
        return nearest == calendar.LatestUpTo(made.Around) || nearest == calendar.NextAfter(made.Around);
    });

    private static Duration Shortest(FloodCalendar calendar, Instant around)
    {
        var shortest = Duration.FromDays(2);
        var due = calendar.NextAfter(around - Duration.FromDays(1));
        for (var number = 0; number < 3 * calendar.PerDay; number++)
        {
            var next = calendar.NextAfter(due);
            shortest = Duration.Min(shortest, next - due);
            due = next;
        }

        return shortest;
    }

    private static FloodCalendar Of(MadeSchedule made) =>
        new(Schedule(made.Times, made.Stagger, made.Photoperiod, made.Photoperiod), made.Zone);

    private static FloodCalendar Of(FloodTimes times, Duration stagger = default, params Photoperiod?[] lights) =>
        new(Schedule(times, stagger, lights), London);

    private static RackSchedule Schedule(FloodTimes times, Duration stagger, params Photoperiod?[] lights) => new()
    {
        Lights = [.. lights],
        LightStagger = stagger,
        Floods = new FloodPlan(
            times, new FillForTime(Duration.FromMinutes(5)), Duration.Zero, Duration.Zero, MissedFloods.Skip),
        Runs = [],
    };

    private static string[] Due(FloodCalendar calendar, Instant after, int count)
    {
        var due = new string[count];
        for (var number = 0; number < count; number++)
        {
            after = calendar.NextAfter(after);
            due[number] = after.InZone(London).ToString("dd'T'HH:mm", null);
        }

        return due;
    }
}
