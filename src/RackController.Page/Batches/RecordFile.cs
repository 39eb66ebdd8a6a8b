using System.Globalization;
using NodaTime.Text;
using RackController.Growing;
using RackController.Model;

namespace RackController.Page;

/// <summary>The growing book as a table for a spreadsheet: a row for each entry, those that were struck among them, so that a tray can be
/// traced back to its seed and forward to whom it went.</summary>
internal static class RecordFile
{
    /// <summary>Its rows, the header first.</summary>
    public static IEnumerable<IEnumerable<string>> Rows(GrowingBook book, Site site)
    {
        yield return
        [
            "number", "put down", "by", "what", "lot", "crop", "day", "trays", "seed lot", "where", "weight (g)", "to or for", "words",
            "struck",
        ];
        foreach (var (number, entry) in book.Entries)
        {
            var crop = entry is BatchEntry about ? book.Batch(about.Lot)?.Start.Crop ?? "" : "";
            var struck = book.Struck.GetValueOrDefault(number);
            yield return
            [
                number.ToString(CultureInfo.InvariantCulture), Csv.Time(entry.At, site.Zone), Csv.Text(entry.By), What(entry),
                Csv.Text((entry as BatchEntry)?.Lot ?? ""), Csv.Text(entry is BatchTakenUp start ? start.Crop : crop), Day(entry),
                Trays(entry), Csv.Text((entry as BatchSown)?.SeedLot ?? ""), Csv.Text(Where(entry)),
                entry is BatchHarvested harvested ? Csv.Number(harvested.WeightG) : "", Csv.Text(Whom(entry)), Csv.Text(Words(entry)),
                Csv.Text(struck is null ? "" : $"by {struck.By}: {struck.Why}"),
            ];
        }
    }

    private static string What(BookEntry entry) => entry switch
    {
        BatchTakenUp => "taken up",
        BatchReplanned => "planned anew",
        BatchSown => "sown",
        BatchMoved => "moved",
        BatchHarvested => "harvested",
        BatchDiscarded => "thrown away",
        BatchNoted => "noted",
        UpkeepDone => "upkeep",
        EntryStruck => "struck",
        _ => "",
    };

    private static string Day(BookEntry entry) => entry switch
    {
        BatchTakenUp start => LocalDatePattern.Iso.Format(start.Sow),
        BatchSown sown => LocalDatePattern.Iso.Format(sown.Day),
        BatchMoved moved => LocalDatePattern.Iso.Format(moved.Day),
        BatchHarvested harvested => LocalDatePattern.Iso.Format(harvested.Day),
        BatchDiscarded discarded => LocalDatePattern.Iso.Format(discarded.Day),
        _ => "",
    };

    private static string Trays(BookEntry entry) => entry switch
    {
        BatchTakenUp start => Csv.Number(start.Trays),
        BatchMoved moved => Csv.Number(moved.Places.Sum(place => place.Trays)),
        BatchHarvested harvested => Csv.Number(harvested.Trays),
        BatchDiscarded discarded => Csv.Number(discarded.Trays),
        _ => "",
    };

    private static string Where(BookEntry entry) => entry switch
    {
        BatchMoved moved => BatchWords.Places(new CourseStep(moved.Day, moved.Stage, moved.Places)),
        BatchHarvested { From.IsEmpty: false } harvested => BatchWords.Places(new CourseStep(harvested.Day, 0, harvested.From)),
        BatchDiscarded { From.IsEmpty: false } discarded => BatchWords.Places(new CourseStep(discarded.Day, 0, discarded.From)),
        UpkeepDone done => done.Rack,
        _ => "",
    };

    private static string Whom(BookEntry entry) => entry switch
    {
        BatchTakenUp start => start.For,
        BatchHarvested harvested => harvested.To,
        _ => "",
    };

    private static string Words(BookEntry entry) => entry switch
    {
        BatchDiscarded discarded => discarded.Why,
        BatchNoted noted => noted.Text,
        UpkeepDone done => done.Note.Length > 0 ? $"{done.Work}: {done.Note}" : done.Work,
        EntryStruck struck => $"entry {struck.Number}: {struck.Why}",
        _ => "",
    };
}
