using NodaTime;
using RackController.Model;

namespace RackController.Notices;

/// <summary>What sort of news there is to tell.</summary>
internal enum TidingKind
{
    /// <summary>An alarm calls.</summary>
    Raised,

    /// <summary>The condition of an alarm that was told has gone.</summary>
    Over,

    /// <summary>An urgent alarm that was told is still not acknowledged.</summary>
    Unseen,

    /// <summary>The controller was stopped, or ended by a defect.</summary>
    Stopped,

    /// <summary>The controller gives no sign of life.</summary>
    Silent,

    /// <summary>The controller drives the racks again.</summary>
    Back,

    /// <summary>A way of telling does not get through.</summary>
    WayFailed,

    /// <summary>Somebody wants to see whether notices arrive.</summary>
    Test,
}

/// <summary>One piece of news that waits to be told.</summary>
/// <param name="Kind">What sort.</param>
/// <param name="Subject">What it is about: the key of an alarm, the site, or the name of a way.</param>
/// <param name="Priority">How urgent.</param>
/// <param name="At">When it happened, by the clock of the controller.</param>
/// <param name="Words">What it is, as a phrase.</param>
/// <param name="TakenAt">When it was taken up here.</param>
internal sealed record Tiding(TidingKind Kind, string Subject, AlarmPriority Priority, Instant At, string Words, Instant TakenAt)
{
    /// <summary>Not told before this; null where only the bundling holds it.</summary>
    public Instant? HeldUntil { get; init; }

    /// <summary>The bundle in which the beginning of this story was told; null for a beginning.</summary>
    public string? Follows { get; init; }
}
