using System.Collections.Immutable;
using RackController.RackFile;

namespace RackController.Page;

/// <summary>The page of the rack file.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="FileName">The name of the file.</param>
/// <param name="Text">What it says.</param>
/// <param name="Fault">Why it cannot be shown; null when it can.</param>
/// <param name="Versions">The earlier versions, newest first.</param>
/// <param name="MayChange">Whether whoever looks may change it.</param>
public sealed record SchedulePage(
    FrameView Frame, string FileName, string Text, string? Fault, ImmutableArray<VersionView> Versions, bool MayChange);

/// <summary>An earlier version.</summary>
/// <param name="Key">Its name in an address.</param>
/// <param name="Until">When it was replaced, local.</param>
public sealed record VersionView(string Key, string Until);

/// <summary>The page of a draft.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="FileName">The name of the file.</param>
/// <param name="Text">The draft.</param>
/// <param name="Complaints">What is wrong with it, and what would be wiser.</param>
/// <param name="Changes">What it changes, line by line.</param>
/// <param name="CanRun">Whether a site can be driven by it.</param>
/// <param name="TriedPercent">How much of the trial is done.</param>
/// <param name="TrialFault">Why the trial came to nothing; null when it did not.</param>
/// <param name="Rows">What the trial came to; empty while it goes on.</param>
/// <param name="Hazards">Every hazard that the trial showed.</param>
public sealed record DraftPage(
    FrameView Frame, string FileName, string Text, ImmutableArray<Complaint> Complaints, ImmutableArray<ChangedLine> Changes, bool CanRun,
    int TriedPercent, string? TrialFault, ImmutableArray<TrialRow> Rows, ImmutableArray<string> Hazards);

/// <summary>The page that says that a draft is in place.</summary>
/// <param name="Frame">What stands around it.</param>
public sealed record AppliedPage(FrameView Frame);
