using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that the word of a sensor may not be believed. Whatever needs it already takes its safe answer; this says
/// which sensor to look at. A sensor has a moment after the start to speak for the first time, and one that comes and goes
/// is told of until it has been steady for as long.</summary>
internal sealed class ReadingUnknown(CauseAndEffectRow row, Sensor sensor, MonotonicTime start)
    : Interlock(row, Place.Of(sensor), [])
{
    private static readonly Duration grace = Duration.FromSeconds(15);
    private MonotonicTime? doubtedSince = start;
    private MonotonicTime knownSince;
    private bool isKnown;
    private bool isTold;
    private string? doubt;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        // As it is with most sensors at most times.
        if (isKnown && doubtedSince is null && facts.IsKnown(sensor.Id))
        {
            return false;
        }

        var now = facts.Now.Monotonic;
        var wasKnown = isKnown;
        isKnown = facts.IsKnown(sensor.Id);
        doubt = facts.DoubtAbout(sensor.Id);
        if (!isKnown)
        {
            doubtedSince ??= now;
            isTold = isTold || IsDue(doubtedSince.Value + grace, now, agenda);
            return isTold;
        }

        knownSince = wasKnown ? knownSince : now;
        if (doubtedSince is not null && IsDue(knownSince + grace, now, agenda))
        {
            doubtedSince = null;
            isTold = false;
        }

        return isTold;
    }

    /// <summary>A sensor of a tier that is out of use may well be unplugged.</summary>
    protected override bool HasNoMeaning(Facts facts) =>
        sensor is { Rack: { } rack, TierNumber: { } tier } && !facts.IsTierInUse(rack, tier);

    public override string Words(ClockFace clock) => isKnown
        ? $"the readings of {sensor.Name} come and go"
        : doubt is null ? $"{sensor.Name} has no believable reading" : $"{sensor.Name} {doubt}";

    private static bool IsDue(MonotonicTime due, MonotonicTime now, Agenda agenda)
    {
        if (now >= due)
        {
            return true;
        }

        agenda.Add(due);
        return false;
    }
}
