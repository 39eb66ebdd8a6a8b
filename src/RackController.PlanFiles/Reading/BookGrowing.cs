using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>What grows already by the growing book, as an orders file would say it.</summary>
internal static class BookGrowing
{
    /// <summary>Its lines: trays of one batch on two tiers are two.</summary>
    /// <param name="book">The book.</param>
    /// <param name="first">The plan's first day.</param>
    /// <param name="byDate">Whether batches move by the day that was planned.</param>
    /// <param name="place">Where to complain of them.</param>
    public static ImmutableArray<GrowingPart> Of(GrowingBook book, LocalDate first, bool byDate, Place place) =>
    [
        .. from batch in book.Batches
           where batch.PhaseOn(first, byDate) is BatchPhase.InTheDark or BatchPhase.InTheLight
           let step = batch.PlacesOn(first, byDate)
           from stand in step?.Places ?? [new StandsOn("", batch.TraysLeft)]
           select new GrowingPart(
               place, place, place, batch.Start.Crop, stand.Trays, batch.Sown!.Day, step is null ? null : FirstLit(batch, byDate),
               step is null ? null : stand.Tier)
           {
               Lot = batch.Lot,
           },
    ];

    private static LocalDate FirstLit(BookedBatch batch, bool byDate) => batch.Moves.Select(move => move.Day)
        .Concat(byDate ? batch.Start.Course.Select(step => step.Day) : []).Min();
}
