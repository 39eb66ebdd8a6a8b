using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;
using RackController.Model;

namespace RackController.Page;

/// <summary>The record of each batch as a row of a table for a spreadsheet: its seed, days, places, floods, light and air, what was done on
/// its racks meanwhile, and what became of it.</summary>
internal static class BatchRecordFile
{
    /// <summary>Its rows, the header first.</summary>
    /// <param name="site">The site.</param>
    /// <param name="book">The book.</param>
    /// <param name="sums">What each batch had, in their order.</param>
    /// <param name="today">The local date.</param>
    public static IEnumerable<IEnumerable<string>> Rows(
        Site site, GrowingBook book, ImmutableArray<GrownSums> sums, LocalDate today)
    {
        yield return
        [
            "lot", "crop", "for", "trays", "seed lot", "sown", "in the light from", "places", "harvested (trays)", "weight (g)", "to",
            "thrown away (trays)", "because", "gone on", "days on record", "floods", "light (mol/m2)", "air least (°C)", "air mean (°C)",
            "air most (°C)", "upkeep meanwhile", "notes", "put down by",
        ];
        foreach (var (batch, had) in book.Batches.Zip(sums))
        {
            var care = BatchCare.Of(site, book, batch, today)
                .Select(done => $"{LocalDatePattern.Iso.Format(done.At.InZone(site.Zone).Date)} {BatchWords.Of(done)}");
            yield return
            [
                Csv.Text(batch.Lot), Csv.Text(batch.Start.Crop), Csv.Text(batch.Start.For), Csv.Number(batch.Start.Trays),
                Csv.Text(batch.Sown?.SeedLot ?? ""), Day(batch.Sown?.Day), Day(FirstLit(batch, site, today)),
                Csv.Text(Joined(batch.Moves.Select(move => BatchWords.Places(new CourseStep(move.Day, move.Stage, move.Places))))),
                Csv.Number(batch.Harvests.Sum(one => one.Trays)), Csv.Number(batch.HarvestedG),
                Csv.Text(Joined(batch.Harvests.Select(one => one.To))), Csv.Number(batch.Discards.Sum(one => one.Trays)),
                Csv.Text(Joined(batch.Discards.Select(one => one.Why))), Day(batch.GoneOn), Csv.Number(had.Days), Csv.Number(had.Floods),
                Csv.Number(had.LightMolPerM2), Csv.Number(had.AirLeastC), Csv.Number(had.AirMeanC), Csv.Number(had.AirMostC),
                Csv.Text(Joined(care)), Csv.Text(Joined(batch.Notes.Select(note => note.Text))),
                Csv.Text(Joined(book.Of(batch.Lot).Where(one => !book.Struck.ContainsKey(one.Number)).Select(one => one.Entry.By))),
            ];
        }
    }

    private static LocalDate? FirstLit(BookedBatch batch, Site site, LocalDate today) => batch.Moves
        .Select(move => move.Day)
        .Concat(site.Batches.MovesByDate && batch.Sown is not null
            ? batch.Start.Course.Where(step => step.Day <= today && !step.Places.IsEmpty).Select(step => step.Day)
            : [])
        .Select(day => (LocalDate?)day).Min();

    private static string Day(LocalDate? day) => day is { } told ? LocalDatePattern.Iso.Format(told) : "";

    private static string Joined(IEnumerable<string> parts) =>
        string.Join("; ", parts.Where(part => part.Length > 0).Distinct(StringComparer.Ordinal));
}
