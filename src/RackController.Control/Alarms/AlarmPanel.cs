using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>All alarms of a site: one for each interlock whose row tells a person something.</summary>
internal sealed class AlarmPanel
{
    private readonly Site site;
    private readonly ImmutableArray<Interlock> interlocks;
    private readonly ImmutableArray<(Interlock Source, AlarmPoint Point)> alarms;
    private readonly ImmutableArray<AlarmPoint?> pointOf;

    public AlarmPanel(Site site, ImmutableArray<Interlock> interlocks)
    {
        this.site = site;
        this.interlocks = interlocks;
        pointOf = [.. interlocks.Select(interlock => interlock.Row.Alarm is null ? null : new AlarmPoint(interlock.Key))];
        alarms = [.. interlocks.Zip(pointOf).Where(pair => pair.Second is not null).Select(pair => (pair.First, pair.Second!))];
    }

    /// <summary>Counts up whenever something changed that must be remembered.</summary>
    public long MemoryVersion { get; private set; }

    /// <summary>When a shelved alarm comes into sight again by itself.</summary>
    public MonotonicTime Due { get; private set; } = MonotonicTime.Never;

    /// <summary>Lets the alarms of these interlocks follow them.</summary>
    /// <param name="moved">The interlocks, by place in the table.</param>
    /// <param name="now">The moment.</param>
    /// <param name="events">Where events go.</param>
    public void Follow(ReadOnlySpan<int> moved, in Moment now, IEventSink events)
    {
        foreach (var i in moved)
        {
            if (pointOf[i] is { } point)
            {
                Follow(interlocks[i], point, now, events);
            }
        }
    }

    /// <summary>Finds when a shelved alarm comes into sight again, after people may have shelved some.</summary>
    public void FindDue()
    {
        Due = MonotonicTime.Never;
        foreach (var (_, point) in alarms)
        {
            Due = MonotonicTime.Earlier(Due, point.Due);
        }
    }

    /// <summary>Acknowledges one alarm.</summary>
    public string Acknowledge(string key, string by, in Moment now, IEventSink events)
    {
        if (Find(key) is not var (source, point))
        {
            return NoSuch(key);
        }

        if (!point.Acknowledge(now))
        {
            return $"{key} is {point.State.InWords()} and needs no acknowledgement";
        }

        source.Acknowledged();
        Tell(source, point, now, $"{by} acknowledged it", events);
        return "acknowledged";
    }

    /// <summary>Shelves one alarm.</summary>
    public string Shelve(string key, Duration length, string by, in Moment now, IEventSink events)
    {
        if (Find(key) is not var (source, point))
        {
            return NoSuch(key);
        }

        var allowed = Duration.Min(Duration.Max(length, Duration.Zero), AlarmPoint.LongestShelving);
        if (!point.Shelve(allowed, now))
        {
            return $"{key} is {point.State.InWords()} and cannot be shelved";
        }

        Tell(source, point, now, $"{by} shelved it for {allowed.InWords()}", events);
        return allowed < length ? $"shelved for {allowed.InWords()}, the longest that is allowed" : "shelved";
    }

    /// <summary>Brings one alarm into sight again.</summary>
    public string Unshelve(string key, string by, in Moment now, IEventSink events)
    {
        if (Find(key) is not var (source, point))
        {
            return NoSuch(key);
        }

        if (!point.Unshelve(now))
        {
            return $"{key} is {point.State.InWords()} and not shelved";
        }

        Tell(source, point, now, $"{by} took it off the shelf", events);
        return $"in sight again, and {point.State.InWords()}";
    }

    /// <summary>Takes one alarm out of service or puts it back.</summary>
    public string SetOutOfService(string key, bool outOfService, string by, in Moment now, IEventSink events)
    {
        if (Find(key) is not var (source, point))
        {
            return NoSuch(key);
        }

        if (!point.SetOutOfService(outOfService, now))
        {
            return $"{key} is {(outOfService ? "out of" : "in")} service already";
        }

        Tell(source, point, now, $"{by} {(outOfService ? "took it out of service" : "put it back into service")}", events);
        return outOfService ? "taken out of service until somebody puts it back" : $"back in service, and {point.State.InWords()}";
    }

    /// <summary>Every alarm that is not normal, most urgent first.</summary>
    public ImmutableArray<Alarm> Standing(in Moment now)
    {
        var moment = now;
        return
        [
            .. alarms.Where(alarm => alarm.Point.State != AlarmState.Normal)
                .Select(alarm => Describe(alarm.Source, alarm.Point, moment))
                .OrderByDescending(alarm => alarm.Priority).ThenBy(alarm => alarm.Key, StringComparer.Ordinal),
        ];
    }

    public void Save(MemoryWriter memory)
    {
        foreach (var (_, point) in alarms)
        {
            point.Save(memory);
        }
    }

    public void Restore(MemoryReader memory, Moment start)
    {
        foreach (var (_, point) in alarms)
        {
            point.Restore(memory, start);
        }
    }

    private void Follow(Interlock source, AlarmPoint point, in Moment now, IEventSink events)
    {
        if (point.Follow(source.IsAlarming, source.IsLatched, source.IsSuppressed, now))
        {
            Tell(source, point, now, source.Words(Clock(now)), events);
        }
    }

    private static string NoSuch(string key) => $"there is no alarm {key}";

    private Alarm Describe(Interlock source, AlarmPoint point, in Moment now)
    {
        var text = source.Row.Alarm!;
        return new Alarm(
            point.Key, text.Priority, point.State, point.Since, source.Words(Clock(now)), text.Consequence, text.Action,
            text.RespondWithin)
        {
            ShelvedUntil = point.State == AlarmState.Shelved ? now.Wall + (point.Due - now.Monotonic) : null,
        };
    }

    private (Interlock Source, AlarmPoint Point)? Find(string key)
    {
        foreach (var alarm in alarms)
        {
            if (alarm.Point.Key == key)
            {
                return alarm;
            }
        }

        return null;
    }

    private ClockFace Clock(in Moment now) => new(now, site.Zone);

    private void Tell(Interlock source, AlarmPoint point, in Moment now, string because, IEventSink events)
    {
        MemoryVersion++;
        events.Take(new ControlEvent(now, EventKind.Alarm, source.Key, point.State.InWords(), because));
    }
}
