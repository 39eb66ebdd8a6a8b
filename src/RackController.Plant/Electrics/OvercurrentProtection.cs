using RackController.Model;

namespace RackController.Plant;

/// <summary>The breaker of one circuit: its heat, brought up to date only when the current changes, so that it does not depend on
/// when anybody looks.</summary>
internal sealed class OvercurrentProtection(BreakerCurve curve)
{
    private double multiple;
    private double heat;
    private MonotonicTime since;

    /// <summary>When it opens if nothing changes.</summary>
    public MonotonicTime TripsAt { get; private set; } = MonotonicTime.Never;

    /// <summary>Whether the current now is one that opens it at once.</summary>
    public bool IsMagnetic => multiple >= curve.MagneticMultiple;

    /// <summary>Takes the current that flows from now on.</summary>
    /// <param name="newMultiple">As a multiple of the rating.</param>
    /// <param name="now">The time now.</param>
    public void Carry(double newMultiple, MonotonicTime now)
    {
        if (newMultiple == multiple)
        {
            return;
        }

        heat = curve.HeatAfter(heat, multiple, PlantTime.Seconds(since, now));
        multiple = newMultiple;
        since = now;
        TripsAt = PlantTime.After(now, curve.SecondsToTrip(heat, multiple));
    }

    /// <summary>It has cooled, or it would not latch when somebody closes it.</summary>
    public void Cool() => heat = 0;
}
