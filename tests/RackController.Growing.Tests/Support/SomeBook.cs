using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing.Tests;

/// <summary>A growing book of a few batches, and the entries to make one of.</summary>
internal static class SomeBook
{
    public static readonly LocalDate May = new(2026, 5, 1);

    private static readonly Instant at = Instant.FromUtc(2026, 5, 1, 6, 0);

    public static GrowingBook Of(params ReadOnlySpan<BookEntry> entries)
    {
        var written = ImmutableArray.CreateBuilder<WrittenEntry>();
        foreach (var entry in entries)
        {
            written.Add(new WrittenEntry(written.Count + 1, entry));
        }

        return GrowingBook.Of(written.DrainToImmutable());
    }

    public static BatchTakenUp TakenUp(string lot, int trays = 4, LitStage? stage = null, params ReadOnlySpan<CourseStep> course) =>
        new(at, "Ada", lot, "pea", trays, May, [stage ?? SomeCrop.Stage(8, 12)], [.. course], May.PlusDays(9), "");

    public static CourseStep Step(int day, int trays, string tier = "north/tier 1", int stage = 0) =>
        new(May.PlusDays(day), stage, [new StandsOn(tier, trays)]);

    public static BatchSown Sown(string lot, int day = 0) => new(at, "Ada", lot, May.PlusDays(day), "bag 17");

    public static BatchMoved Moved(string lot, int day, params ReadOnlySpan<StandsOn> places) =>
        new(at, "Ada", lot, May.PlusDays(day), 0, [.. places]);

    public static BatchHarvested Harvested(string lot, int day, int trays) =>
        new(at, "Ada", lot, May.PlusDays(day), trays, 100 * trays, "");

    public static BatchDiscarded Discarded(string lot, int day, int trays) => new(at, "Ada", lot, May.PlusDays(day), trays, "mould");

    public static EntryStruck Struck(long number) => new(at, "Ada", number, "wrong tray");
}
