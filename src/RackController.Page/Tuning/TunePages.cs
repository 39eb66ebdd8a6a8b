using System.Collections.Immutable;
using RackController.Bench;

namespace RackController.Page;

/// <summary>The page where a rack is fitted to its floods.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Fault">Why nothing can be shown; null when it can.</param>
/// <param name="Racks">The racks of the rack file, by name.</param>
/// <param name="Rack">Which of them, from 0.</param>
/// <param name="Since">The first day that floods are shown of, as a form has it; empty for the newest.</param>
/// <param name="Complaint">What could not be read of what was asked or written; null when all could.</param>
/// <param name="Recorded">Floods that are on record with times.</param>
/// <param name="ByHand">What was written of times by hand, top tier first.</param>
/// <param name="Measured">What the rack file has of an earlier fit, in a sentence; null where it has none.</param>
/// <param name="FloodAddress">Where a flood is asked for; null where whoever looks may ask for none.</param>
/// <param name="LastFit">Which rack was fitted last, and when; null where none was.</param>
public sealed record TunePage(
    FrameView Frame, string? Fault, ImmutableArray<string> Racks, int Rack, string Since, string? Complaint, RecordedFloods Recorded,
    ImmutableArray<HandRow> ByHand, string? Measured, string? FloodAddress, string? LastFit)
{
    /// <summary>Whether whoever looks may have the rack fitted.</summary>
    public bool MayFit => FloodAddress is not null;
}

/// <summary>Floods that are on record with times.</summary>
/// <param name="Fault">Why the record cannot be read; null when it can.</param>
/// <param name="Lacking">What would have to be measured to tell more, in sentences.</param>
/// <param name="Columns">The heads of what is told beside the time.</param>
/// <param name="Floods">The floods, newest first.</param>
/// <param name="AreEnough">Whether there are enough to fit the rack to.</param>
public sealed record RecordedFloods(
    string? Fault, ImmutableArray<string> Lacking, ImmutableArray<string> Columns, ImmutableArray<TableRowView> Floods, bool AreEnough)
{
    /// <summary>None.</summary>
    public static RecordedFloods None { get; } = new(null, [], [], [], false);
}

/// <summary>The page of a fit.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Number">Which fit.</param>
/// <param name="RackName">The rack.</param>
/// <param name="Rack">The place of the rack in the rack file, from 0.</param>
/// <param name="IsUnderWay">Whether it goes on.</param>
/// <param name="Refused">Why there is none; null where there is one, and while it goes on.</param>
/// <param name="Words">The fit; null likewise.</param>
/// <param name="MayDraft">Whether whoever looks may begin a draft of the rack file with it.</param>
/// <param name="Consequences">What comes of that, in sentences.</param>
public sealed record TuneFitPage(
    FrameView Frame, int Number, string RackName, int Rack, bool IsUnderWay, string? Refused, TunedWords? Words, bool MayDraft,
    ImmutableArray<string> Consequences);
