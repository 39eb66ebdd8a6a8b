using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>First step of a scan: implausible, stale or contradictory readings become unknown, never a number.</summary>
internal sealed class Validation
{
    private readonly Site site;
    private readonly ImmutableArray<ReadingJudge> judges;

    public Validation(Site site)
    {
        this.site = site;
        judges = [.. site.Sensors.Select(sensor => Judge(site, sensor))];
    }

    /// <summary>Judges every reading and tells where a sensor became unknown or known again.</summary>
    public void Validate(Readings readings, Facts facts, Agenda agenda, IEventSink events)
    {
        foreach (var sensor in site.Sensors)
        {
            var judge = judges[sensor.Id.Index];
            var wasKnown = judge.IsKnown;
            judge.Judge(readings[sensor.Id], facts.Now.Monotonic, agenda);
            if (judge.IsKnown)
            {
                facts.Know(sensor.Id, judge.Value);
            }
            else
            {
                facts.Forget(sensor.Id);
            }

            if (judge.IsKnown != wasKnown)
            {
                events.Take(new ControlEvent(
                    facts.Now, EventKind.Reading, sensor.Name, judge.IsKnown ? "known" : "unknown",
                    judge.IsKnown ? "its readings have been good for a while" : judge.Refusal));
            }
        }
    }

    private static ReadingJudge Judge(Site site, Sensor sensor)
    {
        var limits = sensor.Rack is { } rack ? site[rack].Limits : InterlockLimits.Default;
        return new ReadingJudge(sensor, limits.SamplesToTrip, limits.ContactReturn);
    }
}
