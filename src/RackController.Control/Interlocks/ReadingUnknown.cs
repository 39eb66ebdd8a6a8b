using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that the word of a sensor may not be believed. Whatever needs it already takes its safe answer; this says
/// which sensor to look at. A sensor has a moment after the start to speak for the first time.</summary>
internal sealed class ReadingUnknown(CauseAndEffectRow row, Sensor sensor, MonotonicTime start) : Interlock(row, sensor.Name, [])
{
    private static readonly Duration grace = Duration.FromSeconds(15);
    private MonotonicTime lastKnown = start;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (facts.IsKnown(sensor.Id))
        {
            lastKnown = facts.Now.Monotonic;
            return false;
        }

        // Known until the scan before, if it was known then: a leap must not count against the sensor.
        if (facts.WasKnown(sensor.Id))
        {
            lastKnown = facts.Now.Monotonic;
        }

        var due = lastKnown + grace;
        if (facts.Now.Monotonic >= due)
        {
            return true;
        }

        agenda.Add(due);
        return false;
    }

    /// <summary>A sensor of a tier that is out of use may well be unplugged.</summary>
    public override bool IsSuppressed(Facts facts) =>
        sensor is { Rack: { } rack, TierNumber: { } tier } && !facts.IsTierInUse(rack, tier);

    public override string Words(ClockFace clock) => $"{sensor.Name} has no believable reading";
}
