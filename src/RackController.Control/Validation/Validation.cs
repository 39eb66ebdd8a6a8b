using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>First step of a scan: implausible, stale or contradictory readings become unknown, never a number.</summary>
internal sealed class Validation
{
    private readonly Site site;
    private readonly ImmutableArray<ReadingJudge> judges;
    private readonly SettledReading[] settled;

    public Validation(Site site)
    {
        this.site = site;
        judges = [.. site.Sensors.Select(sensor => Judge(site, sensor))];
        settled = [.. site.Sensors.Select(sensor => new SettledReading(sensor))];
    }

    /// <summary>Judges every reading, tells where a sensor became unknown or known again, and calls whom that concerns. A settled
    /// reading that says what it said is judged again only where everything is.</summary>
    public void Validate(Readings readings, Facts facts, Attention attention, IEventSink events)
    {
        var now = facts.Now.Monotonic;
        var judgesAll = attention.ConcernsEverybody;
        if (facts.HaveDoubtsMoved)
        {
            TakeDoubts(facts, attention, events);
        }

        for (var i = 0; i < settled.Length; i++)
        {
            var sensor = new SensorId(i);
            ref readonly var reading = ref readings[sensor];
            var isRepeated = settled[i].IsRepeatedBy(reading, now);
            if (judgesAll || (!isRepeated && !settled[i].TryMoveTo(reading, now)))
            {
                Judge(site.Sensors[i], reading, facts, attention, events);
                continue;
            }

            if (!isRepeated)
            {
                Move(sensor, reading.Value, facts, attention);
            }

            facts.Date(sensor, reading.TakenAt);
            if (reading.TakenAt < now)
            {
                attention.Readings.Add(settled[i].GrowsStaleAt(reading));
            }
        }
    }

    private void Judge(Sensor sensor, in Reading reading, Facts facts, Attention attention, IEventSink events)
    {
        var judge = judges[sensor.Id.Index];
        var wasKnown = judge.IsKnown;
        judge.Judge(reading, facts.Now.Monotonic, attention.Readings);
        settled[sensor.Id.Index].Take(reading, judge.IsSettled);
        if (judge.IsKnown)
        {
            Move(sensor.Id, judge.Value, facts, attention);
            facts.Date(sensor.Id, reading.TakenAt);
        }
        else
        {
            facts.Forget(sensor.Id);
        }

        if (judge.IsKnown != wasKnown)
        {
            attention.Call(sensor.Id);
            events.Take(new ControlEvent(
                facts.Now, EventKind.Reading, sensor.Name, judge.IsKnown ? "known" : "unknown",
                judge.IsKnown ? "its readings have been good for a while" : judge.Refusal));
        }
    }

    private void TakeDoubts(Facts facts, Attention attention, IEventSink events)
    {
        facts.HaveDoubtsMoved = false;
        foreach (var sensor in site.Sensors)
        {
            if (!facts.TakeDoubt(sensor.Id))
            {
                continue;
            }

            attention.Call(sensor.Id);
            facts.AskedBy(attention.AreaOf(sensor.Id));
            var doubt = facts.DoubtAbout(sensor.Id);
            events.Take(new ControlEvent(
                facts.Now, EventKind.Reading, sensor.Name, doubt is null ? "known" : "unknown",
                doubt is null ? "it moves again" : $"it {doubt}"));
        }
    }

    private static void Move(SensorId sensor, double value, Facts facts, Attention attention)
    {
        facts.Know(sensor, value);
        if (facts.Matters(sensor, value))
        {
            attention.Call(sensor);
        }
    }

    private static ReadingJudge Judge(Site site, Sensor sensor)
    {
        var limits = sensor.Rack is { } rack ? site[rack].Limits : InterlockLimits.Default;
        return new ReadingJudge(sensor, limits.SamplesToTrip, limits.ContactReturn);
    }
}
