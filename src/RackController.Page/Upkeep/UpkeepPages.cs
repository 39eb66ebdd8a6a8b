using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>The page of upkeep.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Fault">Why not all of it can be shown; null where it can.</param>
/// <param name="MayAct">Whether whoever looks may put works down as done.</param>
/// <param name="Due">The works that are due, what is most so first.</param>
/// <param name="Rest">The others, what is due next first.</param>
/// <param name="Relays">How much of its life each relay has had, the most worn first.</param>
/// <param name="Done">What was put down as done, newest first.</param>
public sealed record UpkeepPage(
    FrameView Frame, string? Fault, bool MayAct, ImmutableArray<UpkeepView> Due, ImmutableArray<UpkeepView> Rest,
    ImmutableArray<RelayView> Relays, ImmutableArray<UpkeepDoneView> Done);

/// <summary>One work on one rack.</summary>
/// <param name="What">What is to be done, and where.</param>
/// <param name="Advice">What it is good for and how it is done.</param>
/// <param name="Every">How often it is due.</param>
/// <param name="Why">Why it is due, or how far it is and when it is expected to be.</param>
/// <param name="Percent">How much of its interval is over, 100 at most.</param>
/// <param name="IsOverdue">Whether it has waited too long.</param>
/// <param name="Address">Where it is put down as done.</param>
public sealed record UpkeepView(
    string What, string Advice, string Every, string Why, int Percent, bool IsOverdue, string Address);

/// <summary>A work with what can be done about it.</summary>
/// <param name="Work">The work.</param>
/// <param name="IsDue">Whether it is due.</param>
/// <param name="MayAct">Whether whoever looks may put it down as done.</param>
public sealed record UpkeepRowView(UpkeepView Work, bool IsDue, bool MayAct);

/// <summary>One relay.</summary>
/// <param name="Load">The load that it switches.</param>
/// <param name="Words">How often it has switched of what it is made for.</param>
/// <param name="Percent">How much of its life is over, 100 at most.</param>
/// <param name="IsWorn">Whether all of it is.</param>
public sealed record RelayView(string Load, string Words, int Percent, bool IsWorn);

/// <summary>Work that was put down as done.</summary>
/// <param name="Number">Its number in the growing book.</param>
/// <param name="At">When, local.</param>
/// <param name="What">What was done, and where.</param>
/// <param name="By">By whom.</param>
/// <param name="Note">What there is to say of it; empty for nothing.</param>
/// <param name="Struck">Who struck it and why; null where it counts.</param>
public sealed record UpkeepDoneView(long Number, string At, string What, string By, string Note, string? Struck);

/// <summary>A page that shows what comes of putting something down, and takes a few words with it.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Complaint">Why it was not put down; null before it was tried.</param>
/// <param name="Lines">What comes of it.</param>
/// <param name="Field">What the field for words is called.</param>
/// <param name="IsFieldRequired">Whether something must be written there.</param>
/// <param name="Verb">What the button says.</param>
/// <param name="Address">Where the answer goes.</param>
/// <param name="Hidden">What goes with it.</param>
public sealed record UpkeepForm(
    FrameView Frame, string? Complaint, ImmutableArray<string> Lines, string Field, bool IsFieldRequired, string Verb, string Address,
    ImmutableArray<HiddenField> Hidden);
