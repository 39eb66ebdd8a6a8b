using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>A time relay in the pump's own wire: it counts while the pump's relay gives it power, opens the wire when its time is over,
/// and starts again from nothing once the power was gone. It asks no controller.</summary>
/// <param name="after">Its time as it should be set.</param>
/// <param name="faults">What is wrong with it.</param>
internal sealed class TimeCutoutRelay(Duration after, LoadFaults faults)
{
    private MonotonicTime liveSince = MonotonicTime.Never;

    /// <summary>Whether it holds the wire open.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>When it opens the wire; <see cref="MonotonicTime.Never"/> while nothing runs towards that.</summary>
    public MonotonicTime Due { get; private set; } = MonotonicTime.Never;

    /// <summary>When it first opened the wire; null when it never did.</summary>
    public MonotonicTime? FirstOpenedAt { get; private set; }

    /// <summary>Feels whether it has power.</summary>
    /// <param name="isLive">Whether it has.</param>
    /// <param name="now">The time now.</param>
    public void Feel(bool isLive, MonotonicTime now)
    {
        if (!isLive)
        {
            liveSince = MonotonicTime.Never;
        }
        else if (liveSince == MonotonicTime.Never)
        {
            liveSince = now;
        }

        var opensAt = !isLive || faults.TimeRelayHangs ? MonotonicTime.Never : liveSince + (faults.TimeRelayAfter ?? after);
        IsOpen = isLive && (IsOpen || opensAt <= now);
        Due = IsOpen ? MonotonicTime.Never : opensAt;
        FirstOpenedAt ??= IsOpen ? now : null;
    }
}
