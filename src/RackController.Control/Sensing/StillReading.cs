using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Looks once an hour whether a slow sensor has moved. One that says the same to the last bit, hour after hour, although something
/// happened that must have moved it, has frozen: lights that were switched warm or cool the air round them within the hour, and light and
/// floods together move the water within a day. A reading that merely rests is left alone, however long.
/// </summary>
/// <param name="sensor">An air or water sensor.</param>
/// <param name="movesWithin">How long what stirs it may take to show.</param>
/// <param name="doubt">Its doubt.</param>
/// <param name="start">The moment of taking charge.</param>
internal sealed class StillReading(Sensor sensor, Duration movesWithin, ReadingDoubt doubt, MonotonicTime start)
{
    private static readonly Duration period = Duration.FromHours(1);
    private MonotonicTime lookAt = start + period;
    private double? held;
    private MonotonicTime? stirredAt;

    /// <summary>Looks at the sensor.</summary>
    /// <param name="facts">What this scan knows.</param>
    /// <param name="isStirred">Whether something happened now that must move it.</param>
    /// <param name="agenda">Takes the time of the next look.</param>
    public void Look(Facts facts, bool isStirred, Agenda agenda)
    {
        stirredAt ??= isStirred ? facts.Now.Monotonic : null;
        if (facts.Now.Monotonic >= lookAt)
        {
            Judge(facts);
            lookAt = facts.Now.Monotonic + period;
        }

        agenda.Add(lookAt);
    }

    private void Judge(Facts facts)
    {
        if (!facts.TrySample(sensor.Id, lookAt, out var value))
        {
            (held, stirredAt) = (null, null);
            return;
        }

        if (held is not { } before || !value.Equals(before))
        {
            (held, stirredAt) = (value, null);
        }
        else if (stirredAt is { } stirred && facts.Now.Monotonic - stirred >= movesWithin)
        {
            doubt.Begin(facts, "has not changed by a bit although light or water moved it");
            (held, stirredAt) = (null, null);
        }
    }
}
