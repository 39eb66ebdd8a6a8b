using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>The page of who is told of alarms while nobody looks.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="IsAsked">Whether the rack file asks for notices.</param>
/// <param name="Wrong">What keeps them from being sent, and what to do; empty while nothing does.</param>
/// <param name="QuietHours">When only the more urgent gets through, in words; null for never.</param>
/// <param name="Ways">By which ways.</param>
/// <param name="MayTest">Whether whoever reads it may ask for a test message now.</param>
/// <param name="WasTestAsked">Whether they just have.</param>
public sealed record NoticesPage(
    FrameView Frame, bool IsAsked, ImmutableArray<string> Wrong, string? QuietHours, ImmutableArray<WayView> Ways, bool MayTest,
    bool WasTestAsked);

/// <summary>One way of telling.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="What">What is told that way, in words.</param>
/// <param name="LastSuccess">When something last got through, in words.</param>
/// <param name="Fault">What went wrong last and when; null when nothing did.</param>
/// <param name="Waiting">How many messages wait, in words; null when none does.</param>
public sealed record WayView(string Name, string What, string LastSuccess, string? Fault, string? Waiting);
