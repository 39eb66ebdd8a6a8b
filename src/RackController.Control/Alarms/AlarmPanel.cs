using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>All alarms of a site: one for each interlock whose row tells a person something.</summary>
internal sealed class AlarmPanel
{
    private readonly Site site;
    private readonly ImmutableArray<(Interlock Source, AlarmPoint Point)> alarms;

    public AlarmPanel(Site site, ImmutableArray<Interlock> interlocks)
    {
        this.site = site;
        alarms =
        [
            .. interlocks.Where(interlock => interlock.Row.Alarm is not null)
                .Select(interlock => (interlock, new AlarmPoint(interlock.Key))),
        ];
    }

    /// <summary>Counts up whenever something changed that must be remembered.</summary>
    public long MemoryVersion { get; private set; }

    /// <summary>Lets every alarm follow its interlock.</summary>
    public void Follow(Facts facts, Agenda agenda, IEventSink events)
    {
        foreach (var (source, point) in alarms)
        {
            if (point.Follow(source.IsAlarming, source.IsLatched, source.IsSuppressed(facts), facts.Now, agenda))
            {
                Tell(source, point, facts.Now, source.Words(Clock(facts.Now)), events);
            }
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
        var clock = Clock(now);
        return
        [
            .. alarms.Where(alarm => alarm.Point.State != AlarmState.Normal)
                .Select(alarm => Describe(alarm.Source, alarm.Point, clock))
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

    private static string NoSuch(string key) => $"there is no alarm {key}";

    private static Alarm Describe(Interlock source, AlarmPoint point, ClockFace clock)
    {
        var text = source.Row.Alarm!;
        return new Alarm(
            point.Key, text.Priority, point.State, point.Since, source.Words(clock), text.Consequence, text.Action,
            text.RespondWithin);
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
