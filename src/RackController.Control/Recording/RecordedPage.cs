using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>How a page of the record begins.</summary>
public enum PageKind
{
    /// <summary>It goes on where the page before it ended.</summary>
    Continues,

    /// <summary>The controller took charge: its state is that of its memory, and every load is in its safe state.</summary>
    Starts,

    /// <summary>It goes on, and what the controller remembers is put down between two scans: a place to begin reading, and to hold
    /// a replay against.</summary>
    Checkpoint,

    /// <summary>Something before it is missing; what the controller remembers is put down, to begin again from there.</summary>
    Resumes,
}

/// <summary>Some minutes of the record of a run.</summary>
/// <param name="Number">Counts the pages of a run from 0; one that is missing was lost.</param>
/// <param name="Kind">How it begins.</param>
/// <param name="At">The moment at which it begins.</param>
/// <param name="State">What is put down where it begins; null on a page that continues.</param>
/// <param name="Scans">The scans, in order.</param>
public sealed record RecordedPage(
    long Number, PageKind Kind, Moment At, RecordedState? State, ImmutableArray<RecordedScan> Scans);

/// <summary>What the controller remembered and was told at the beginning of a page.</summary>
/// <param name="Memory">What it remembered; null for a rack that was never driven.</param>
/// <param name="Commands">What every load was told, by its place on the site.</param>
/// <param name="Readings">What every sensor said as far as it is on record.</param>
public sealed record RecordedState(
    ControlMemory? Memory, ImmutableArray<SwitchState> Commands, ImmutableArray<RecordedReading> Readings);

/// <summary>A page as it is kept.</summary>
/// <param name="Begins">The moment at which it begins.</param>
/// <param name="Body">Its bytes, for <see cref="RecordedPages.Read"/>.</param>
public readonly record struct PageBytes(Moment Begins, byte[] Body);
