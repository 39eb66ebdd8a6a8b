using RackController.Model;

namespace RackController.Plant;

/// <summary>A float switch in the pump's own wire, with a relay that latches by a spring: wet, it opens the wire, and it stays open,
/// dry or without supply, until somebody presses its reset. It asks no controller.</summary>
/// <param name="wet">Whether water reaches the float.</param>
/// <param name="notYetDry">Whether water still holds it up once lifted, <see cref="DifferentialMm"/> lower.</param>
/// <param name="pump">The pump.</param>
internal sealed class CutoutSwitch(Threshold wet, Threshold notYetDry, LoadElectrics pump)
{
    /// <summary>How much the water falls until a float that was lifted is dry again, mm: an assumption of ours. Without any, one above
    /// a standpipe that does not latch would switch the pump that lifts it without end.</summary>
    public const double DifferentialMm = 2;

    /// <summary>Whether the float is held down, so that it never lifts.</summary>
    public bool IsStuck { get; set; }

    /// <summary>Whether a hand holds the float up, which is the same to it as water.</summary>
    public bool IsHeldUp { get; set; }

    /// <summary>Whether its relay does not latch, so that the wire closes again once the float is dry.</summary>
    public bool DoesNotLatch { get; set; }

    /// <summary>When it first opened the wire; null when it never did.</summary>
    public MonotonicTime? FirstOpenedAt { get; private set; }

    /// <summary>Whether the wire is open.</summary>
    public bool IsOpen => pump.IsWireOpen;

    /// <summary>Opens the wire if the float is wet; closes it when dry only where it does not latch.</summary>
    /// <param name="now">The time now.</param>
    /// <returns>Whether it did either.</returns>
    public bool Follow(MonotonicTime now)
    {
        if (IsOpen == IsLifted || (IsOpen && !DoesNotLatch))
        {
            return false;
        }

        if (IsOpen)
        {
            pump.IsWireOpen = false;
            return true;
        }

        FirstOpenedAt ??= now;
        pump.IsWireOpen = true;
        return true;
    }

    /// <summary>Somebody presses its reset, which closes the wire unless the float is still wet.</summary>
    public void Reset() => pump.IsWireOpen = IsLifted && IsOpen;

    private bool IsLifted => !IsStuck && (IsHeldUp || (IsOpen ? notYetDry : wet).IsReached);
}
