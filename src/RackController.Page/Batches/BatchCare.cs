using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Page;

/// <summary>Finds the work that was done on racks while a batch stood there: water and cleanness are part of its story.</summary>
internal static class BatchCare
{
    /// <summary>It, in the order in which it was put down.</summary>
    /// <param name="site">The site.</param>
    /// <param name="book">The book.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="today">The local date.</param>
    public static IEnumerable<UpkeepDone> Of(Site site, GrowingBook book, BookedBatch batch, LocalDate today) =>
        batch.Sown is not { } sown ? [] : book.Upkeep.Where(done =>
            done.At.InZone(site.Zone).Date is var day && day >= sown.Day && day <= (batch.GoneOn ?? today)
            && (Stood(site, batch, day, done.Rack) || Stood(site, batch, day.PlusDays(-1), done.Rack)));

    // On the day on which it left its tier it had stood there in the morning.
    private static bool Stood(Site site, BookedBatch batch, LocalDate day, string rack) =>
        (batch.PlacesOn(day, site.Batches.MovesByDate)?.Places ?? []).Any(place => SiteTiers.Find(site, place.Tier)?.Rack.Name == rack);
}
