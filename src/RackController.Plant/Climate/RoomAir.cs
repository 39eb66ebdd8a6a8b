using RackController.Model;

namespace RackController.Plant;

/// <summary>The air of the room round all racks: where it is going and when it will be there. In between, temperature and vapour
/// pressure change evenly.</summary>
internal sealed class RoomAir(SimulatedRack[] racks)
{
    private double celsius;
    private double vapourKPa;

    /// <summary>When it stops changing; <see cref="MonotonicTime.Never"/> while it stays as it is.</summary>
    public MonotonicTime ReachedAt { get; private set; } = MonotonicTime.Never;

    /// <summary>Sets where it goes.</summary>
    /// <param name="aimC">Temperature, degrees Celsius.</param>
    /// <param name="humidityPercent">Relative humidity, %.</param>
    /// <param name="now">The time now.</param>
    /// <param name="reachedAt">When it shall be there; now or earlier for at once.</param>
    public void Aim(double aimC, double humidityPercent, MonotonicTime now, MonotonicTime reachedAt)
    {
        celsius = aimC;
        vapourKPa = HumidAir.SaturationKPa(aimC) * humidityPercent / 100;
        ReachedAt = reachedAt;
        if (!Reach(now))
        {
            foreach (var rack in racks)
            {
                rack.LetRoomRun(celsius, vapourKPa, PlantTime.Seconds(now, reachedAt));
            }
        }
    }

    /// <summary>Stops changing if it is where it goes.</summary>
    /// <returns>Whether it came there now.</returns>
    public bool Reach(MonotonicTime now)
    {
        if (now < ReachedAt)
        {
            return false;
        }

        ReachedAt = MonotonicTime.Never;
        foreach (var rack in racks)
        {
            rack.SetRoom(celsius, vapourKPa);
        }

        return true;
    }
}
