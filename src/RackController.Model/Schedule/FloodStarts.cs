using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>When floods begin on an ordinary day of 24 h, on which no clock changes. The times of a real date, with its zone, are
/// for whoever runs the floods.</summary>
public static class FloodStarts
{
    /// <summary>When floods begin, as time since midnight, each within the day, in order.</summary>
    /// <param name="times">How they are timed.</param>
    /// <param name="lit">When each light comes on and for how long; they decide where floods are spread over them.</param>
    public static ImmutableArray<Duration> StartsOn(this FloodTimes times, IEnumerable<(Duration Start, Duration Length)> lit)
    {
        var starts = times switch
        {
            FloodsAt at => at.Times.Select(SinceMidnight),
            FloodsEvery every => Spread(SinceMidnight(every.Start), every.Length, every.Interval),
            FloodsOverPhotoperiod over => OverPhotoperiod(over.Count, [.. lit]),
            NoFloods => [],
            _ => throw new InvariantBrokenException("every way to time floods has its starts"),
        };
        return [.. starts.Select(WithinDay).Distinct().Order()];
    }

    /// <summary>When the floods of a schedule begin, as time since midnight, in order.</summary>
    /// <param name="schedule">The schedule of a rack.</param>
    public static ImmutableArray<Duration> Starts(this RackSchedule schedule) => schedule.Floods.Times.StartsOn(Lit(schedule));

    /// <summary>The least time from the start of one flood to the start of the next; null without floods.</summary>
    /// <param name="schedule">The schedule of a rack.</param>
    public static Duration? LeastSpacing(this RackSchedule schedule)
    {
        var starts = schedule.Starts();
        return starts.IsEmpty
            ? null
            : starts.Zip([.. starts.Skip(1), starts[0] + Duration.FromDays(1)], (one, next) => next - one).Min();
    }

    private static IEnumerable<(Duration Start, Duration Length)> Lit(RackSchedule schedule) => schedule.Lights
        .Select((photoperiod, index) => photoperiod is null
            ? ((Duration Start, Duration Length)?)null
            : (WithinDay(SinceMidnight(photoperiod.Start) + schedule.LightStagger * index), photoperiod.Length))
        .OfType<(Duration Start, Duration Length)>();

    private static IEnumerable<Duration> OverPhotoperiod(int count, ImmutableArray<(Duration Start, Duration Length)> lit)
    {
        var day = Duration.FromDays(1);
        if (lit.IsEmpty)
        {
            return Spread(Duration.Zero, day, day / count);
        }

        var first = lit.Min(one => one.Start);
        var span = Duration.Min(day, lit.Max(one => one.Start + one.Length) - first);
        return Spread(first, span, span / count);
    }

    private static IEnumerable<Duration> Spread(Duration start, Duration length, Duration interval)
    {
        // Seven sevenths of a day fall short of it by nanoseconds, and what is left is no eighth flood.
        var slack = Duration.FromMilliseconds(1);
        for (var passed = Duration.Zero; passed == Duration.Zero || passed < length - slack; passed += interval)
        {
            yield return start + passed;
            if (interval <= slack)
            {
                yield break;
            }
        }
    }

    private static Duration SinceMidnight(LocalTime time) => Duration.FromNanoseconds(time.NanosecondOfDay);

    private static Duration WithinDay(Duration time)
    {
        var rest = time.ToInt64Nanoseconds() % NodaConstants.NanosecondsPerDay;
        return Duration.FromNanoseconds(rest < 0 ? rest + NodaConstants.NanosecondsPerDay : rest);
    }
}
