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

        try
        {
            var book = books.Look();
            var known = book.Batches.Select(batch => batch.Lot).ToHashSet(StringComparer.Ordinal);
            var planned = plan.Entries.OfType<BatchTakenUp>().Select(start => start.Lot).ToHashSet(StringComparer.Ordinal);
            var fresh = plan.Entries.OfType<BatchEntry>().Where(entry => !known.Contains(entry.Lot)).ToList();
            var gone = book.Entries
                .Where(one => !book.Struck.ContainsKey(one.Number) && one.Entry is BatchTakenUp start && !planned.Contains(start.Lot)
                    && book.Batch(start.Lot) is { Sown: null })
                .Select(one => new EntryStruck(now, by, one.Number, "not in the plan that was taken up since"))
                .ToList();
            return books.Write([.. gone, .. fresh]) is { } wrong
                ? ("", $"Nothing was taken up. {wrong}")
                : ($"{Count(fresh.OfType<BatchTakenUp>().Count())} new, {Count(planned.Intersect(known).Count())} as they were, "
                    + $"{Count(gone.Count)} struck", null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return ("", $"Nothing was taken up: {e.Message}");
        }
    }

    private static string Count(int batches) => batches == 1 ? "1 batch" : $"{batches} batches";
}
