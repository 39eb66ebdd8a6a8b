using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>
/// What the entries of the growing book come to: batches and where they stand, and the work that was done on racks. Entries about a lot
/// that nobody took up, and those that were struck, count for nothing.
/// </summary>
/// <param name="Entries">All entries, in order, those that were struck among them.</param>
/// <param name="Struck">The numbers of those that were struck, with who struck them and why.</param>
/// <param name="Batches">The batches, in the order in which they were taken up.</param>
/// <param name="Upkeep">The work that was done, in order.</param>
public sealed record GrowingBook(
    ImmutableArray<WrittenEntry> Entries, ImmutableDictionary<long, EntryStruck> Struck, ImmutableArray<BookedBatch> Batches,
    ImmutableArray<UpkeepDone> Upkeep)
{
    /// <summary>A book in which nothing stands.</summary>
    public static readonly GrowingBook Empty = Of([]);

    /// <summary>Reads the entries.</summary>
    /// <param name="entries">All entries, in order.</param>
    public static GrowingBook Of(ImmutableArray<WrittenEntry> entries)
    {
        var struck = entries.Select(one => one.Entry).OfType<EntryStruck>()
            .GroupBy(one => one.Number).ToImmutableDictionary(same => same.Key, same => same.First());
        var lots = new List<string>();
        var batches = new Dictionary<string, BookedBatch>(StringComparer.Ordinal);
        foreach (var entry in entries.Where(one => !struck.ContainsKey(one.Number)).Select(one => one.Entry).OfType<BatchEntry>())
        {
            if (entry is BatchTakenUp start && batches.TryAdd(entry.Lot, new BookedBatch { Start = start }))
            {
                lots.Add(entry.Lot);
            }
            else if (batches.TryGetValue(entry.Lot, out var batch))
            {
                batches[entry.Lot] = With(batch, entry);
            }
        }

        return new GrowingBook(
            entries, struck, [.. lots.Select(lot => batches[lot])],
            [.. entries.Where(one => !struck.ContainsKey(one.Number)).Select(one => one.Entry).OfType<UpkeepDone>()]);
    }

    /// <summary>The batch of a lot; null where there is none.</summary>
    /// <param name="lot">The lot code.</param>
    public BookedBatch? Batch(string lot) => Batches.FirstOrDefault(batch => batch.Lot == lot);

    /// <summary>The entries about a lot, those that were struck among them.</summary>
    /// <param name="lot">The lot code.</param>
    public ImmutableArray<WrittenEntry> Of(string lot) =>
        [.. Entries.Where(one => one.Entry is BatchEntry entry && entry.Lot == lot)];

    /// <summary>What stands on tiers on a day.</summary>
    /// <param name="day">The day.</param>
    /// <param name="byDate">Whether batches move by the day that was planned.</param>
    public ImmutableArray<Standing> StandingOn(LocalDate day, bool byDate) =>
    [
        .. from batch in Batches
           let step = batch.PlacesOn(day, byDate)
           where step is not null
           from place in step.Places
           select new Standing(place.Tier, place.Trays, batch, step.Stage),
    ];

    /// <summary>The tiers on which something stood on a day or before.</summary>
    /// <param name="day">The day.</param>
    /// <param name="byDate">Whether batches move by the day that was planned.</param>
    public ImmutableHashSet<string> TiersKnownOn(LocalDate day, bool byDate) =>
    [
        .. from batch in Batches
           where batch.Sown is { } sown && sown.Day <= day
           from place in batch.Moves.Where(move => move.Day <= day).SelectMany(move => move.Places)
               .Concat(byDate ? batch.Start.Course.Where(step => step.Day <= day).SelectMany(step => step.Places) : [])
           select place.Tier,
    ];

    // What is sown late grows late.
    private static BatchTakenUp Shifted(BatchTakenUp start, int days) => days == 0 ? start : start with
    {
        Sow = start.Sow.PlusDays(days),
        Course = [.. start.Course.Select(step => step with { Day = step.Day.PlusDays(days) })],
        Harvest = start.Harvest.PlusDays(days),
    };

    private static BookedBatch With(BookedBatch batch, BatchEntry entry) => entry switch
    {
        BatchReplanned replanned => batch with
        {
            Start = batch.Start with { Course = replanned.Course, Harvest = replanned.Harvest, For = replanned.For },
        },
        BatchSown sown => batch with { Sown = sown, Start = Shifted(batch.Start, Period.DaysBetween(batch.Start.Sow, sown.Day)) },
        BatchMoved moved => batch with { Moves = [.. batch.Moves.Add(moved).OrderBy(move => move.Day)] },
        BatchHarvested harvested => batch with { Harvests = batch.Harvests.Add(harvested) },
        BatchDiscarded discarded => batch with { Discards = batch.Discards.Add(discarded) },
        BatchNoted noted => batch with { Notes = batch.Notes.Add(noted) },
        _ => batch,
    };
}

/// <summary>Trays of a batch on a tier.</summary>
/// <param name="Tier">The name of the tier with its rack.</param>
/// <param name="Trays">How many.</param>
/// <param name="Batch">The batch.</param>
/// <param name="Stage">The stage in the light, from 0.</param>
public sealed record Standing(string Tier, int Trays, BookedBatch Batch, int Stage)
{
    /// <summary>What the stage needs. A stage that the batch does not have counts as its last.</summary>
    public LitStage Needs => Batch.Start.Stages[Math.Min(Stage, Batch.Start.Stages.Length - 1)];
}
