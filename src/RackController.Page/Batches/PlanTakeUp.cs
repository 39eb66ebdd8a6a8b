using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.PlanFiles;
using RackController.Service;

namespace RackController.Page;

/// <summary>Takes the batches of a plan up into the growing book: what the book has already stays, and what was planned before, is not
/// sown, and is not in the plan any more, is struck.</summary>
/// <param name="books">The book.</param>
/// <param name="site">The site.</param>
internal sealed class PlanTakeUp(BookDesk books, Site site)
{
    private const int MostNamed = 12;

    /// <summary>Takes them up, all or none.</summary>
    /// <param name="json">The plan.</param>
    /// <param name="now">The time.</param>
    /// <param name="by">Who does.</param>
    /// <returns>What came of it in words, or what is wrong.</returns>
    public (string Taken, string? Wrong) Take(string json, Instant now, string by)
    {
        var plan = PlanBatches.Read(json, now, by, now.InZone(site.Zone).Date);
        if (plan.Complaint is { } complaint)
        {
            return ("", complaint);
        }

        if (plan.Site != site.Name)
        {
            return ("", $"This plan is of {BookRules.Cut(plan.Site)}, and these are the racks of {site.Name}.");
        }

        try
        {
            var book = books.Look();
            var starts = plan.Entries.OfType<BatchTakenUp>().ToDictionary(start => start.Lot, StringComparer.Ordinal);
            var unsown = book.Batches.Where(batch => batch.Sown is null).ToDictionary(batch => batch.Lot, StringComparer.Ordinal);
            var same = unsown.Values.Where(batch => starts.TryGetValue(batch.Lot, out var start) && IsSame(batch.Start, start))
                .Select(batch => batch.Lot).ToHashSet(StringComparer.Ordinal);

            // A batch that a person began by hand is nobody's to take back but theirs.
            var gone = unsown.Values.Where(batch => !same.Contains(batch.Lot) && (batch.Start.IsOfPlan || starts.ContainsKey(batch.Lot)))
                .Select(batch => batch.Lot).ToHashSet(StringComparer.Ordinal);
            var growing = book.Batches.Where(batch => batch.Sown is not null && starts.ContainsKey(batch.Lot)).ToList();
            var moved = growing.Where(batch => batch.TraysLeft > 0 && !HasSameCourse(batch.Start, starts[batch.Lot])).ToList();
            var settled = growing.Select(batch => batch.Lot).Concat(same).ToHashSet(StringComparer.Ordinal);
            var fresh = plan.Entries.OfType<BatchEntry>().Where(entry => !settled.Contains(entry.Lot)).ToList();
            ImmutableArray<BookEntry> entries =
            [
                .. book.Entries
                    .Where(one => !book.Struck.ContainsKey(one.Number) && one.Entry is BatchTakenUp start && gone.Contains(start.Lot))
                    .Select(one => new EntryStruck(now, by, one.Number, "not so in the plan that was taken up since")),
                .. fresh,
                .. moved.Select(batch => starts[batch.Lot])
                    .Select(start => new BatchReplanned(now, by, start.Lot, start.Course, start.Harvest, start.For)),
            ];
            return books.Write(entries) is { } wrong
                ? ("", $"Nothing was taken up. {wrong}")
                : (Words(starts.Count - settled.Count, settled.Count - moved.Count, moved.Count, gone), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return ("", $"Nothing was taken up: {e.Message}");
        }
    }

    private static bool IsSame(BatchTakenUp one, BatchTakenUp other) => one.Trays == other.Trays && one.Crop == other.Crop
        && one.Sow == other.Sow && HasSameCourse(one, other);

    private static bool HasSameCourse(BatchTakenUp one, BatchTakenUp other) => one.Harvest == other.Harvest && one.For == other.For
        && one.Course.Length == other.Course.Length
        && one.Course.Zip(other.Course).All(pair => pair.First.Day == pair.Second.Day && pair.First.Stage == pair.Second.Stage
            && pair.First.Places.SequenceEqual(pair.Second.Places));

    private static string Words(int fresh, int kept, int moved, HashSet<string> gone)
    {
        var named = $" ({string.Join(", ", gone.Order(StringComparer.Ordinal).Take(MostNamed))}{(gone.Count > MostNamed ? ", …" : "")})";
        (int Count, string What)[] all =
        [
            (fresh, "new"), (kept, "as planned before"), (moved, "growing, with other days or places"), (gone.Count, "struck" + named),
        ];
        var told = all.Where(one => one.Count > 0).Select(one => $"{Count(one.Count)} {one.What}");
        return string.Join("; ", told.DefaultIfEmpty("nothing new"));
    }

    private static string Count(int batches) => batches == 1 ? "1 batch" : $"{batches} batches";
}
