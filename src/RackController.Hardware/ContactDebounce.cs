using NodaTime;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>
/// Takes the bounce out of one contact. The harmful side is believed at once; the harmless side only once it has held
/// without an edge for a while.
/// </summary>
/// <param name="harmfulValue">The value on the harmful side, 0 or 1.</param>
/// <param name="hold">How long the harmless side must hold.</param>
internal sealed class ContactDebounce(double harmfulValue, Duration hold)
{
    private MonotonicTime? harmlessSince;

    /// <summary>What the contact says: null until it has held its first value, else 0 or 1.</summary>
    internal double? Value { get; private set; }

    /// <summary>Takes one sample.</summary>
    /// <param name="now">When it was taken.</param>
    /// <param name="sample">The level read, as 0 or 1.</param>
    /// <param name="changedSinceLast">Whether the line reported an edge since the sample before.</param>
    internal void Sample(MonotonicTime now, double sample, bool changedSinceLast)
    {
        if (sample == harmfulValue)
        {
            Value = sample;
            harmlessSince = null;
            return;
        }

        if (harmlessSince is null || changedSinceLast)
        {
            harmlessSince = now;
        }

        if (now - harmlessSince.Value >= hold)
        {
            Value = sample;
        }
    }

    /// <summary>Forgets everything, as after a loss of the line.</summary>
    internal void Forget()
    {
        Value = null;
        harmlessSince = null;
    }
}
