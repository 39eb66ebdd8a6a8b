using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Judges what one sensor says. A stale, corrupt or implausible reading makes the sensor unknown at once; it is known again
/// after a run of good ones. A contact turns to its harmful side after a sample or two and to its harmless side only after
/// holding for a while: trip fast, clear slowly.
/// </summary>
internal sealed class ReadingJudge(Sensor sensor, int samplesToTrip, Duration clearAfter)
{
    private MonotonicTime? goodSince;
    private MonotonicTime? clearSince;
    private int harmfulSamples;
    private bool isHarmful;

    /// <summary>Whether the sensor may be believed.</summary>
    public bool IsKnown { get; private set; }

    /// <summary>What it says, after debouncing a contact. Means nothing unless <see cref="IsKnown"/>.</summary>
    public double Value { get; private set; }

    /// <summary>Whether the same reading again, as long as it is fresh, would change nothing.</summary>
    public bool IsSettled { get; private set; }

    /// <summary>Why the last reading was refused.</summary>
    public string Refusal { get; private set; } = "no reading yet";

    /// <summary>Judges the reading of one scan.</summary>
    public void Judge(in Reading reading, MonotonicTime now, Agenda agenda)
    {
        if (!IsBelievable(reading, now))
        {
            goodSince = null;
            clearSince = null;
            harmfulSamples = 0;
            IsKnown = false;
            IsSettled = false;
            NameFuture(reading, now, agenda);
            return;
        }

        if (reading.TakenAt < now)
        {
            agenda.Add(reading.TakenAt + sensor.StaleAfter);
        }

        goodSince ??= now;
        if (sensor.HarmfulValue is { } harmfulValue)
        {
            var value = reading.Value >= 0.5 ? 1 : 0;
            JudgeContact(value, harmfulValue, now, agenda);
            IsSettled = IsKnown && Value == value;
        }
        else
        {
            Value = reading.Value;
            IsKnown = IsKnown || Held(goodSince.Value, now, agenda);
            IsSettled = IsKnown;
        }
    }

    private void JudgeContact(double value, double harmfulValue, MonotonicTime now, Agenda agenda)
    {
        if (value == harmfulValue)
        {
            clearSince = null;
            if (IsKnown && isHarmful)
            {
                return;
            }

            harmfulSamples = Math.Min(harmfulSamples + 1, samplesToTrip);
            if (harmfulSamples < samplesToTrip)
            {
                agenda.AddNextScan();
                return;
            }

            isHarmful = true;
            IsKnown = true;
        }
        else
        {
            harmfulSamples = 0;
            clearSince ??= now;
            if ((!IsKnown || isHarmful) && !Held(clearSince.Value, now, agenda))
            {
                return;
            }

            isHarmful = false;
            IsKnown = true;
        }

        Value = isHarmful ? harmfulValue : 1 - harmfulValue;
    }

    private bool Held(MonotonicTime since, MonotonicTime now, Agenda agenda)
    {
        if (now >= since + clearAfter)
        {
            return true;
        }

        agenda.Add(since + clearAfter);
        return false;
    }

    // A reading of a time to come may be believed once it is now.
    private static void NameFuture(in Reading reading, MonotonicTime now, Agenda agenda)
    {
        if (reading.TakenAt > now)
        {
            agenda.Add(reading.TakenAt);
        }
    }

    private bool IsBelievable(in Reading reading, MonotonicTime now)
    {
        if (reading.Quality != ReadingQuality.Good)
        {
            Refusal = reading.Quality == ReadingQuality.Missing
                ? "no reading yet"
                : "the sensor or its bus reports an error (on a board `doctor` says which)";
            return false;
        }

        if (reading.TakenAt > now || now > reading.TakenAt + sensor.StaleAfter)
        {
            Refusal = "its reading is stale";
            return false;
        }

        // Written so that a value that is not a number fails it.
        if (!(reading.Value >= sensor.PlausibleMin && reading.Value <= sensor.PlausibleMax))
        {
            Refusal = "its reading is out of range";
            return false;
        }

        return true;
    }
}
