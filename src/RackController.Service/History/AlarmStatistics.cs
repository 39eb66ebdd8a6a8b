using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// How often alarms called a person over some days, in the figures by which ISA-18.2 and EEMUA 191 judge an alarm system: an alarm that
/// calls too often is not heard. What counts is an alarm becoming unacknowledged.
/// </summary>
/// <param name="PerDay">How many came on each day, oldest first.</param>
/// <param name="MostInTenMinutes">The most that came within any ten minutes.</param>
/// <param name="Floods">How many stretches there were in which more than ten came within ten minutes.</param>
/// <param name="MostFrequent">The alarms that came most often, with how often; ten at most.</param>
/// <param name="Chattering">The alarms that came three times or more within a minute, and how often that was so.</param>
/// <param name="ByPriority">How many came of each priority, most urgent first.</param>
/// <param name="Standing">The alarms that have not been normal for more than a day, and since when.</param>
public sealed record AlarmStatistics(
    ImmutableArray<DayCount> PerDay, int MostInTenMinutes, int Floods, ImmutableArray<AlarmCount> MostFrequent,
    ImmutableArray<AlarmCount> Chattering, ImmutableArray<(AlarmPriority Priority, int Count)> ByPriority,
    ImmutableArray<(string Key, Instant Since)> Standing)
{
    /// <summary>More than so many in ten minutes are a flood of alarms.</summary>
    public const int MostWithoutFlood = 10;

    /// <summary>So many in a minute are chatter.</summary>
    public const int LeastChatter = 3;

    private const int MostNamed = 10;

    private static readonly Duration tenMinutes = Duration.FromMinutes(10);

    /// <summary>How many came in all.</summary>
    public int Count => PerDay.Sum(day => day.Count);

    /// <summary>Counts.</summary>
    /// <param name="oldestFirst">Every event of alarms over the days, oldest first.</param>
    /// <param name="days">The days, from local midnight to now.</param>
    /// <param name="zone">Whose days.</param>
    /// <param name="priorityOf">How urgent an alarm is; null for one that is no more.</param>
    public static AlarmStatistics Of(
        IReadOnlyList<ControlEvent> oldestFirst, HistorySpan days, DateTimeZone zone, Func<string, AlarmPriority?> priorityOf)
    {
        ArgumentNullException.ThrowIfNull(oldestFirst);
        var unacknowledged = AlarmState.Unacknowledged.InWords();
        var calls = oldestFirst.Where(happened => happened.What == unacknowledged).ToList();
        var times = calls.Select(call => call.At.Wall).Order().ToList();
        return new AlarmStatistics(
            [.. PerDayOf(times, days, zone)], MostWithin(times, tenMinutes), FloodsIn(times),
            [.. calls.CountBy(call => call.Subject).Select(each => new AlarmCount(each.Key, each.Value))
                .OrderByDescending(each => each.Count).ThenBy(each => each.Key, StringComparer.Ordinal).Take(MostNamed)],
            [.. calls.GroupBy(call => call.Subject)
                .Select(each => new AlarmCount(each.Key, ChatterIn([.. each.Select(call => call.At.Wall)])))
                .Where(each => each.Count > 0).OrderByDescending(each => each.Count)],
            [.. Enum.GetValues<AlarmPriority>().Reverse()
                .Select(priority => (priority, calls.Count(call => priorityOf(call.Subject) == priority)))],
            [.. StandingAt(oldestFirst, days.Until)]);
    }

    private static IEnumerable<DayCount> PerDayOf(List<Instant> times, HistorySpan days, DateTimeZone zone)
    {
        var counts = times.CountBy(at => at.InZone(zone).Date).ToDictionary();
        for (var day = days.From.InZone(zone).Date; day <= days.Until.InZone(zone).Date; day = day.PlusDays(1))
        {
            yield return new DayCount(day, counts.GetValueOrDefault(day));
        }
    }

    /// <summary>The most times that lie within any window of a length.</summary>
    private static int MostWithin(List<Instant> times, Duration length)
    {
        var (most, first) = (0, 0);
        for (var last = 0; last < times.Count; last++)
        {
            while (times[last] - times[first] > length)
            {
                first++;
            }

            most = Math.Max(most, last - first + 1);
        }

        return most;
    }

    // A flood goes on for as long as ten minutes back there were too many.
    private static int FloodsIn(List<Instant> times)
    {
        var (floods, first, isFlood) = (0, 0, false);
        for (var last = 0; last < times.Count; last++)
        {
            while (times[last] - times[first] > tenMinutes)
            {
                first++;
            }

            var isMany = last - first + 1 > MostWithoutFlood;
            floods += isMany && !isFlood ? 1 : 0;
            isFlood = isMany;
        }

        return floods;
    }

    private static int ChatterIn(List<Instant> times)
    {
        var (chatter, at) = (0, 0);
        while (at + LeastChatter <= times.Count)
        {
            var isChatter = times[at + LeastChatter - 1] - times[at] <= Duration.FromMinutes(1);
            chatter += isChatter ? 1 : 0;
            at += isChatter ? LeastChatter : 1;
        }

        return chatter;
    }

    private static IEnumerable<(string Key, Instant Since)> StandingAt(IReadOnlyList<ControlEvent> oldestFirst, Instant now)
    {
        var since = new SortedDictionary<string, Instant>(StringComparer.Ordinal);
        foreach (var happened in oldestFirst)
        {
            if (happened.What == AlarmState.Normal.InWords())
            {
                since.Remove(happened.Subject);
            }
            else
            {
                since.TryAdd(happened.Subject, happened.At.Wall);
            }
        }

        return since.Where(alarm => now - alarm.Value > Duration.FromDays(1)).Select(alarm => (alarm.Key, alarm.Value));
    }
}

/// <summary>How many alarms came on a day.</summary>
/// <param name="Day">The day.</param>
/// <param name="Count">How many.</param>
public readonly record struct DayCount(LocalDate Day, int Count);

/// <summary>How often an alarm did something.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Count">How often.</param>
public readonly record struct AlarmCount(string Key, int Count);
