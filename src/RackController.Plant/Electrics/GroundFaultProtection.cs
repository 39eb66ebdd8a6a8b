using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// The ground-fault protection of one circuit, which sums up what leaks to earth behind it. A leakage that changes goes on from the
/// share of the time that is spent; one that may stay for ever lets it forget.
/// </summary>
internal sealed class GroundFaultProtection(GroundFaultCurve curve)
{
    private double leakMilliA;
    private double spentShare;
    private MonotonicTime since;

    /// <summary>When it opens if nothing changes.</summary>
    public MonotonicTime TripsAt { get; private set; } = MonotonicTime.Never;

    /// <summary>Takes the leakage that flows from now on.</summary>
    /// <param name="newLeakMilliA">mA.</param>
    /// <param name="now">The time now.</param>
    public void Carry(double newLeakMilliA, MonotonicTime now)
    {
        if (newLeakMilliA == leakMilliA)
        {
            return;
        }

        spentShare += PlantTime.Seconds(since, now) / curve.SecondsToTrip(leakMilliA);
        var seconds = curve.SecondsToTrip(newLeakMilliA);
        spentShare = double.IsInfinity(seconds) ? 0 : spentShare;
        leakMilliA = newLeakMilliA;
        since = now;
        TripsAt = PlantTime.After(now, (1 - spentShare) * seconds);
    }
}
