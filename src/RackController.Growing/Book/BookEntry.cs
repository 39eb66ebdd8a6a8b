using System.Text.Json.Serialization;
using NodaTime;

namespace RackController.Growing;

/// <summary>
/// Something that a person did and that is kept for good: an entry of the growing book. Entries are only ever added; one that was wrong is
/// struck by another, and stays legible. Days are those of the place, and may lie before the time at which they were put down.
/// </summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(BatchTakenUp), "taken-up")]
[JsonDerivedType(typeof(BatchReplanned), "replanned")]
[JsonDerivedType(typeof(BatchSown), "sown")]
[JsonDerivedType(typeof(BatchMoved), "moved")]
[JsonDerivedType(typeof(BatchHarvested), "harvested")]
[JsonDerivedType(typeof(BatchDiscarded), "discarded")]
[JsonDerivedType(typeof(BatchNoted), "noted")]
[JsonDerivedType(typeof(UpkeepDone), "upkeep")]
[JsonDerivedType(typeof(EntryStruck), "struck")]
public abstract record BookEntry(Instant At, string By);

/// <summary>Work on a rack that keeps it well was done.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Work">The kind of work, by its key.</param>
/// <param name="Rack">The name of the rack.</param>
/// <param name="Note">What there is to say of it; empty for nothing.</param>
public sealed record UpkeepDone(Instant At, string By, string Work, string Rack, string Note) : BookEntry(At, By);

/// <summary>An entry was wrong and counts no more.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Number">The number of the entry that was wrong.</param>
/// <param name="Why">Why, in the person's words.</param>
public sealed record EntryStruck(Instant At, string By, long Number, string Why) : BookEntry(At, By);

/// <summary>An entry as it stands in the book.</summary>
/// <param name="Number">Its number, from 1, in the order in which they were put down.</param>
/// <param name="Entry">The entry.</param>
public sealed record WrittenEntry(long Number, BookEntry Entry);
