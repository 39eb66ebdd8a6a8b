using NodaTime;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>
/// Takes the bounce out of one contact. The first sample is believed, since the scan asks for a run of good ones anyway, and
/// so is the harmful side at any time; the way back to the harmless side only once it has held without an edge for a while.
/// </summary>
/// <param name="harmfulValue">The reading that asks for action, 0 or 1.</param>
/// <param name="hold">How long the harmless side must hold.</param>
internal sealed class ContactDebounce(double harmfulValue, Duration hold)
{
    private double? value;
    private MonotonicTime? harmlessSince;

    /// <summary>Takes one sample.</summary>
    /// <param name="now">When it was taken.</param>
    /// <param name="sample">The level read, as 0 or 1.</param>
    /// <param name="changedSinceLast">Whether the line reported an edge since the sample before.</param>
    /// <returns>What the contact says, 0 or 1.</returns>
    internal double Sample(MonotonicTime now, double sample, bool changedSinceLast)
    {
        if (sample == harmfulValue)
        {
            value = sample;
            harmlessSince = null;
            return sample;
        }

        if (harmlessSince is null || changedSinceLast)
        {
            harmlessSince = now;
        }

        if (value is null || now - harmlessSince.Value >= hold)
        {
            value = sample;
        }

        return value.Value;
    }

    /// <summary>Forgets everything, as after a loss of the line.</summary>
    internal void Forget()
    {
        value = null;
        harmlessSince = null;
    }
}
