using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RackController.Page;

/// <summary>The growing book, as it stands today.</summary>
/// <param name="Batches">The batches, in the order in which they were taken up.</param>
/// <param name="Changes">What the batches ask of the schedules, in words.</param>
/// <param name="Disagreements">Which of them do not agree, in words.</param>
/// <param name="Unreadable">The numbers of entries that this version cannot read.</param>
internal sealed record ApiBatches(
    ImmutableArray<ApiBatch> Batches, ImmutableArray<string> Changes, ImmutableArray<string> Disagreements,
    ImmutableArray<long> Unreadable);

/// <summary>A batch.</summary>
/// <param name="Lot">Its lot code.</param>
/// <param name="Crop">What grows.</param>
/// <param name="Trays">How many insert trays it was begun with.</param>
/// <param name="TraysLeft">How many are there still.</param>
/// <param name="Phase">planned, in-the-dark, in-the-light or gone.</param>
/// <param name="SeedLot">The lot of the seed; null where nobody told.</param>
/// <param name="Sown">The day on which it was sown; null while it is not.</param>
/// <param name="Places">Where it stands in the light.</param>
/// <param name="Harvest">The day on which it is to be harvested.</param>
/// <param name="Next">What is next and when, in words; null for nothing.</param>
/// <param name="IsDue">Whether that is due.</param>
internal sealed record ApiBatch(
    string Lot, string Crop, int Trays, int TraysLeft, string Phase, string? SeedLot, string? Sown, ImmutableArray<ApiPlace> Places,
    string Harvest, string? Next, bool IsDue);

/// <summary>Trays on a tier.</summary>
/// <param name="Tier">The tier with its rack.</param>
/// <param name="Trays">How many.</param>
internal sealed record ApiPlace(string Tier, int Trays);

/// <summary>All that is on record of a batch.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Facts">What is known of it.</param>
/// <param name="Entries">What was put down, oldest first.</param>
internal sealed record ApiBatchRecord(ApiBatch Batch, ImmutableArray<ApiFact> Facts, ImmutableArray<ApiEntry> Entries);

/// <summary>A name and what it stands for.</summary>
/// <param name="Name">The name.</param>
/// <param name="Value">What it stands for.</param>
internal sealed record ApiFact(string Name, string Value);

/// <summary>An entry of the book.</summary>
/// <param name="Number">Its number.</param>
/// <param name="At">When it was put down.</param>
/// <param name="By">By whom.</param>
/// <param name="Words">What it says.</param>
/// <param name="Struck">Who struck it and why; null where nobody did.</param>
internal sealed record ApiEntry(long Number, string At, string By, string Words, string? Struck);

/// <summary>Something to put down of a batch.</summary>
/// <param name="What">sown, moved, harvested, discarded, noted or struck.</param>
/// <param name="Lot">The lot code of the batch.</param>
/// <param name="Day">The day; today where it is left out.</param>
/// <param name="SeedLot">Of what is sown: the lot of the seed.</param>
/// <param name="Stage">Of what is moved: the stage in the light, from 0.</param>
/// <param name="Places">Of what is moved: where all of its trays stand then; of what is harvested or thrown away: where those
/// stood.</param>
/// <param name="Trays">Of what is harvested or thrown away: how many.</param>
/// <param name="WeightG">Of what is harvested: the weight in all, g.</param>
/// <param name="To">Of what is harvested: to whom it goes.</param>
/// <param name="Text">The note, or why something is thrown away or struck.</param>
/// <param name="Number">Of what is struck: the number of the entry.</param>
internal sealed record ApiDeed(
    string? What, string? Lot, string? Day, string? SeedLot, int? Stage, ImmutableArray<ApiPlace>? Places, int? Trays, double? WeightG,
    string? To, string? Text, long? Number);

/// <summary>How the growing book is written and read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(ApiBatches))]
[JsonSerializable(typeof(ApiBatchRecord))]
[JsonSerializable(typeof(ApiDeed))]
internal sealed partial class ApiBatchesJson : JsonSerializerContext;
