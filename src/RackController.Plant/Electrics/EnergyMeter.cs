using RackController.Model;

namespace RackController.Plant;

/// <summary>Energy as real power times time. It adds up only when the power changes, so what it says does not depend on when
/// anybody looks.</summary>
internal struct EnergyMeter
{
    private double untilChangeJ;
    private double powerW;
    private MonotonicTime changedAt;

    /// <summary>Takes the real power that is drawn from now on.</summary>
    /// <param name="newPowerW">W.</param>
    /// <param name="now">The time now.</param>
    public void Draw(double newPowerW, MonotonicTime now)
    {
        if (newPowerW != powerW)
        {
            untilChangeJ = EnergyJ(now);
            powerW = newPowerW;
            changedAt = now;
        }
    }

    /// <summary>Energy drawn since the start, J.</summary>
    /// <param name="now">The time now.</param>
    public readonly double EnergyJ(MonotonicTime now) => untilChangeJ + powerW * PlantTime.Seconds(changedAt, now);
}
