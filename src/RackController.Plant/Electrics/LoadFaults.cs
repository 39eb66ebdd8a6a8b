using NodaTime;

namespace RackController.Plant;

/// <summary>What faults do to one load and its relay.</summary>
internal sealed class LoadFaults
{
    /// <summary>How its relay's contact is held: closed or open; null where it does as it is told.</summary>
    public bool? ContactHeld { get; set; }

    /// <summary>How late its relay's contact follows its command; zero for a sound one.</summary>
    public Duration RelayLate { get; set; }

    /// <summary>Mean time between the changes of a relay that chatters; zero for a sound one.</summary>
    public Duration RelayChatters { get; set; }

    /// <summary>Whether it is dead: a burnt-out driver or winding, a plug that is pulled. It draws nothing.</summary>
    public bool IsDead { get; set; }

    /// <summary>Whether its motor is held fast.</summary>
    public bool HeldFast { get; set; }

    /// <summary>What leaks from it to earth at full voltage, mA.</summary>
    public double LeakMilliA { get; set; }

    /// <summary>Whether the time relay in its wire never opens.</summary>
    public bool TimeRelayHangs { get; set; }

    /// <summary>The time to which the time relay in its wire has gone or been turned; null where it is as it should be.</summary>
    public Duration? TimeRelayAfter { get; set; }

    /// <summary>Nothing is wrong with it.</summary>
    public void Clear()
    {
        ContactHeld = null;
        RelayLate = Duration.Zero;
        RelayChatters = Duration.Zero;
        IsDead = false;
        HeldFast = false;
        LeakMilliA = 0;
        TimeRelayHangs = false;
        TimeRelayAfter = null;
    }
}
