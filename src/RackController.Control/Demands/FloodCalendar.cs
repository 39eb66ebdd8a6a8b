using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// When floods are due, by local time. Times that the clock skips fall on the first moment after the gap, times that come
/// twice count once, and times that fall together are one flood. A series counted in elapsed time ends where the series of
/// the next day begins, so that a day of 23 hours crowds no floods. Due times are whole seconds: they are remembered
/// across restarts and must compare equal afterwards. Pure; costly enough to ask once per flood, never once per scan.
/// </summary>
internal sealed class FloodCalendar
{
    /// <summary>How many local days away from an instant a series that still matters to it may have begun: one, and one more
    /// for lights so staggered that the first of them comes on after midnight.</summary>
    private const int DaysAround = 2;

    /// <summary>More days than one question reaches over, so that the next question finds them known.</summary>
    private const int DaysKnown = 8;

    private readonly DateTimeZone zone;
    private readonly FloodTimes times;
    private readonly ImmutableArray<LightCalendar> lights;
    private readonly (LocalDate Date, ImmutableArray<Instant> Due)[] known = new (LocalDate, ImmutableArray<Instant>)[DaysKnown];

    public FloodCalendar(RackSchedule schedule, DateTimeZone zone)
    {
        this.zone = zone;
        times = schedule.Floods.Times;
        lights =
        [
            .. schedule.Lights
                .Select((photoperiod, index) =>
                    photoperiod is null ? null : new LightCalendar(zone, photoperiod, schedule.LightStagger * index))
                .OfType<LightCalendar>(),
        ];
        PerDay = times switch
        {
            FloodsAt at => at.Times.Length,
            FloodsEvery every => Series(every.Length, every.Interval),
            FloodsOverPhotoperiod over => over.Count,
            _ => 0,
        };
    }

    /// <summary>How many floods an ordinary day has.</summary>
    public int PerDay { get; }

    /// <summary>Whether no flood is ever due.</summary>
    public bool IsEmpty => PerDay == 0;

    /// <summary>24 hours over the floods of an ordinary day.</summary>
    public Duration MeanSpacing => IsEmpty ? Duration.Zero : Duration.FromDays(1) / PerDay;

    /// <summary>The first due time after an instant; the maximum instant when there is none.</summary>
    public Instant NextAfter(Instant time)
    {
        if (IsEmpty)
        {
            return Instant.MaxValue;
        }

        var date = time.InZone(zone).Date.PlusDays(-DaysAround);
        while (true)
        {
            foreach (var due in DueOn(date))
            {
                if (due > time)
                {
                    return due;
                }
            }

            date = date.PlusDays(1);
        }
    }

    /// <summary>The last due time up to and with an instant; the minimum instant when there is none.</summary>
    public Instant LatestUpTo(Instant time)
    {
        if (IsEmpty)
        {
            return Instant.MinValue;
        }

        var date = time.InZone(zone).Date.PlusDays(DaysAround);
        while (true)
        {
            var due = DueOn(date);
            for (var i = due.Length - 1; i >= 0; i--)
            {
                if (due[i] <= time)
                {
                    return due[i];
                }
            }

            date = date.PlusDays(-1);
        }
    }

    /// <summary>The due time nearest to an instant; the earlier one of two that are equally near.</summary>
    public Instant Nearest(Instant time)
    {
        var (earlier, later) = (LatestUpTo(time), NextAfter(time));
        return later - time < time - earlier ? later : earlier;
    }

    /// <summary>How many due times lie after an instant, up to and with another.</summary>
    public int CountBetween(Instant after, Instant upTo)
    {
        var count = 0;
        var last = upTo.InZone(zone).Date.PlusDays(DaysAround);
        for (var date = after.InZone(zone).Date.PlusDays(-DaysAround); date <= last; date = date.PlusDays(1))
        {
            count += DueOn(date).Count(due => due > after && due <= upTo);
        }

        return count;
    }

    /// <summary>The due times of a day's series, in order, each once.</summary>
    private ImmutableArray<Instant> DueOn(LocalDate date)
    {
        ref var day = ref known[date.DayOfYear % DaysKnown];
        if (day.Due.IsDefault || day.Date != date)
        {
            day = (date, WorkOut(date));
        }

        return day.Due;
    }

    private ImmutableArray<Instant> WorkOut(LocalDate date) => times switch
    {
        FloodsAt at => [.. at.Times.Select(time => zone.Happens(date, time)).Distinct().Order()],
        FloodsEvery every => Spread(
            zone.Happens(date, every.Start), every.Length, every.Interval,
            zone.Happens(date.PlusDays(1), every.Start)),
        FloodsOverPhotoperiod over => Spread(
            FirstLight(date), LitSpan(date), LitSpan(date) / over.Count, FirstLight(date.PlusDays(1))),
        _ => [],
    };

    private static ImmutableArray<Instant> Spread(Instant start, Duration length, Duration interval, Instant nextSeries)
    {
        var due = ImmutableArray.CreateBuilder<Instant>();
        for (var number = 0; number < Series(length, interval); number++)
        {
            var time = start + WholeSeconds(interval * number);
            if (time >= nextSeries)
            {
                break;
            }

            due.Add(time);
        }

        return due.ToImmutable();
    }

    /// <summary>How many times, one interval apart from the start on, lie within a length; at least one.</summary>
    private static int Series(Duration length, Duration interval)
    {
        // Half a microsecond forgives that a third of a span, three times, is a nanosecond off.
        var slack = Duration.FromNanoseconds(500);
        return interval <= Duration.Zero ? 1 : Math.Max(1, (int)Math.Ceiling((length - slack) / interval));
    }

    private static Duration WholeSeconds(Duration length) =>
        Duration.FromSeconds((length + Duration.FromNanoseconds(500)).ToInt64Nanoseconds() / NodaConstants.NanosecondsPerSecond);

    /// <summary>The start of a day's first light; midnight on a rack without lights.</summary>
    private Instant FirstLight(LocalDate date) =>
        lights.IsEmpty ? zone.Happens(date, LocalTime.Midnight) : lights.Min(light => light.Start(date));

    private Duration LitSpan(LocalDate date) =>
        lights.IsEmpty
            ? Duration.FromDays(1)
            : Duration.Min(Duration.FromDays(1), lights.Max(light => light.End(date)) - FirstLight(date));
}
