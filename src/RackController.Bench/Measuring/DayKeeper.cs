using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Notices when a local day is over. Only days that were seen from their first moment are handed over.</summary>
internal sealed class DayKeeper(Site site, Instant start)
{
    private readonly int[] floods = new int[site.Racks.Length];
    private LocalDate date = start.InZone(site.Zone).Date;
    private bool isWhole = IsDayStart(site, start);

    /// <summary>When the day that is under way ends.</summary>
    public Instant EndsAt { get; private set; } = EndOf(site, start.InZone(site.Zone).Date);

    /// <summary>Counts a flood.</summary>
    public void CountFlood(RackId rack) => floods[rack.Index]++;

    /// <summary>Closes the day if it is over.</summary>
    /// <returns>The day's totals; null while it goes on, and for a first day that began before the run.</returns>
    public DayTotals? CloseIfOver(Instant now, LoadLedger loads)
    {
        if (now < EndsAt)
        {
            return null;
        }

        var length = EndsAt - date.AtStartOfDayInZone(site.Zone).ToInstant();
        var totals = new DayTotals(date, length, [.. floods], loads.CloseDay());
        var closed = isWhole ? totals : null;
        date = date.PlusDays(1);
        EndsAt = EndOf(site, date);
        isWhole = true;
        Array.Clear(floods);
        return closed;
    }

    private static Instant EndOf(Site site, LocalDate date) => date.PlusDays(1).AtStartOfDayInZone(site.Zone).ToInstant();

    private static bool IsDayStart(Site site, Instant time) =>
        time.InZone(site.Zone).Date.AtStartOfDayInZone(site.Zone).ToInstant() == time;
}
