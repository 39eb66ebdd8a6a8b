using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>The page of floods.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Fault">Why nothing can be shown; null when it can.</param>
/// <param name="Racks">Every rack.</param>
public sealed record FloodsPage(FrameView Frame, string? Fault, ImmutableArray<RackFloods> Racks);

/// <summary>The floods of one rack.</summary>
/// <param name="Index">Its place on the site, from 0.</param>
/// <param name="Name">Its name.</param>
/// <param name="Drifts">What differs from the month before, in sentences.</param>
/// <param name="Lacking">What would have to be measured to tell more, in sentences.</param>
/// <param name="Columns">The heads of what is told beside time and reason, with units.</param>
/// <param name="Floods">The floods, newest first.</param>
public sealed record RackFloods(
    int Index, string Name, ImmutableArray<string> Drifts, ImmutableArray<string> Lacking, ImmutableArray<string> Columns,
    ImmutableArray<FloodView> Floods);

/// <summary>One flood.</summary>
/// <param name="At">When it began, local.</param>
/// <param name="Why">Why.</param>
/// <param name="AtRest">Which tiers took no part; null when all did.</param>
/// <param name="CutShort">What cut it short; null when nothing did.</param>
/// <param name="Cells">What is told of it.</param>
public sealed record FloodView(string At, string Why, string? AtRest, string? CutShort, ImmutableArray<string> Cells);
