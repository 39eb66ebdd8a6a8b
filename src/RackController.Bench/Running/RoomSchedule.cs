using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Sends the air of the simulated room from point to point of its day, until an event of the scenario takes over.</summary>
/// <param name="profile">How the air runs over the day; null for a room that stays as it is.</param>
/// <param name="site">The site, whose local times count.</param>
/// <param name="plant">The simulated site.</param>
/// <param name="clock">The time of the run.</param>
internal sealed class RoomSchedule(RoomProfile? profile, Site site, SimulatedSite plant, VirtualClock clock)
{
    /// <summary>When the air is sent to its next point; never when nothing sends it.</summary>
    public MonotonicTime NextAt { get; private set; } = profile is null ? MonotonicTime.Never : MonotonicTime.Zero;

    /// <summary>Sends the air on when it is due.</summary>
    public void Look()
    {
        if (profile is null || clock.Bench < NextAt)
        {
            return;
        }

        var (at, point) = profile.After(clock.True, site.Zone);
        NextAt = clock.Bench + (at - clock.True);
        plant.SetRoom(point.AirC, point.HumidityPercent, NextAt);
    }

    /// <summary>An event takes over: the air stays as it says.</summary>
    public void Stop() => NextAt = MonotonicTime.Never;
}
