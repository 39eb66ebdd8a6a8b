using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>The page of batches.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="MayAct">Whether whoever looks may put down what was done.</param>
/// <param name="MayChange">Whether whoever looks may change the rack file.</param>
/// <param name="Fault">What is wrong with the book; null when nothing is.</param>
/// <param name="Asks">What the batches ask of the racks.</param>
/// <param name="Sought">What is looked for; empty for nothing.</param>
/// <param name="Groups">The batches, by what is to be done with them.</param>
public sealed record BatchesPage(
    FrameView Frame, bool MayAct, bool MayChange, string? Fault, AsksView Asks, string Sought, ImmutableArray<BatchGroup> Groups);

/// <summary>What batches ask of the racks.</summary>
/// <param name="Changes">What would be other than it is.</param>
/// <param name="Disagreements">Who does not agree with whom.</param>
/// <param name="Follows">Whether the schedule follows by itself.</param>
public sealed record AsksView(ImmutableArray<string> Changes, ImmutableArray<string> Disagreements, bool Follows);

/// <summary>Batches with something in common.</summary>
/// <param name="Title">What.</param>
/// <param name="Rows">The batches.</param>
public sealed record BatchGroup(string Title, ImmutableArray<BatchRow> Rows);

/// <summary>A batch in a list.</summary>
/// <param name="Lot">Its lot code.</param>
/// <param name="Crop">What grows.</param>
/// <param name="Stands">Where it is in its life, in words.</param>
/// <param name="Next">What is next and when; empty for nothing.</param>
/// <param name="IsDue">Whether that is due.</param>
/// <param name="Deed">What would put it down, as the last part of an address; null for none.</param>
/// <param name="DeedWords">What its button says.</param>
public sealed record BatchRow(string Lot, string Crop, string Stands, string Next, bool IsDue, string? Deed, string DeedWords)
{
    /// <summary>The address of the batch.</summary>
    public string Address => BatchAddress.Of(Lot);

    /// <summary>The address of what puts the next down.</summary>
    public string? DeedAddress => Deed is null ? null : BatchAddress.Of(Deed, Lot);
}

/// <summary>The page of one batch: all that is on record of it, to print too.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="MayAct">Whether whoever looks may put down what was done.</param>
/// <param name="Row">The batch.</param>
/// <param name="Facts">What is known of it, as name and value.</param>
/// <param name="Entries">What was put down of it, newest first.</param>
/// <param name="Care">Work that was done on its racks while it stood there.</param>
/// <param name="Deeds">What can be put down now, as last part of an address and words.</param>
public sealed record BatchPage(
    FrameView Frame, bool MayAct, BatchRow Row, ImmutableArray<Fact> Facts, ImmutableArray<EntryRow> Entries, ImmutableArray<string> Care,
    ImmutableArray<DeedLink> Deeds);

/// <summary>A name and what it stands for.</summary>
/// <param name="Name">The name.</param>
/// <param name="Value">What it stands for.</param>
public sealed record Fact(string Name, string Value);

/// <summary>Something that can be put down of a batch.</summary>
/// <param name="Address">Where.</param>
/// <param name="Words">What the button says.</param>
public sealed record DeedLink(string Address, string Words);

/// <summary>An entry of the book.</summary>
/// <param name="Number">Its number.</param>
/// <param name="At">When it was put down, local.</param>
/// <param name="By">By whom.</param>
/// <param name="Words">What it says.</param>
/// <param name="Struck">Who struck it and why; null where nobody did.</param>
/// <param name="StrikeAddress">Where it can be struck; null where it cannot.</param>
public sealed record EntryRow(long Number, string At, string By, string Words, string? Struck, string? StrikeAddress);

/// <summary>The form that puts something down of a batch.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Title">What is put down.</param>
/// <param name="Wrong">What was wrong with what was sent; null for nothing.</param>
/// <param name="Hints">What to know.</param>
/// <param name="Address">Where it goes.</param>
/// <param name="Verb">What the button says.</param>
/// <param name="Back">Where to go instead.</param>
/// <param name="Fields">What is asked.</param>
public sealed record BatchFormPage(
    FrameView Frame, string Title, string? Wrong, ImmutableArray<string> Hints, string Address, string Verb, string Back,
    ImmutableArray<FormField> Fields);

/// <summary>A field of a form.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Label">What is asked.</param>
/// <param name="Kind">The type of the input; <c>select</c> and <c>hidden</c> among them.</param>
/// <param name="Value">What stands in it.</param>
public sealed record FormField(string Name, string Label, string Kind, string Value)
{
    /// <summary>The least number.</summary>
    public string? Least { get; init; }

    /// <summary>The greatest number or last day.</summary>
    public string? Most { get; init; }

    /// <summary>How fine a number is.</summary>
    public string? Step { get; init; }

    /// <summary>Whether it may not be left out.</summary>
    public bool IsRequired { get; init; }

    /// <summary>What can be chosen, as value and words.</summary>
    public ImmutableArray<Fact> Options { get; init; } = [];
}

/// <summary>Addresses of batches.</summary>
internal static class BatchAddress
{
    /// <summary>That of a batch.</summary>
    public static string Of(string lot) => $"/batches/one?lot={Uri.EscapeDataString(lot)}";

    /// <summary>That of something that is put down of a batch.</summary>
    public static string Of(string deed, string lot) => $"/batches/{deed}?lot={Uri.EscapeDataString(lot)}";
}
