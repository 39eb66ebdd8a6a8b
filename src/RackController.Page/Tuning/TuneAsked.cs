using NodaTime;
using NodaTime.Text;
using RackController.Model;

namespace RackController.Page;

/// <summary>Of which rack and since when somebody asks for floods.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Since">The first day; null for the newest floods.</param>
/// <param name="Complaint">What could not be read of it; null when all could.</param>
internal sealed record TuneAsked(Rack Rack, LocalDate? Since, string? Complaint)
{
    // No journal goes back so far, and days at the ends of the calendar begin outside of it.
    private static readonly LocalDate earliest = new(2000, 1, 1);
    private static readonly LocalDate latest = new(2999, 12, 31);

    /// <summary>Reads it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="named">The rack, by its name or its place in the rack file from 0; the first where that is empty.</param>
    /// <param name="since">The day; empty for none.</param>
    public static TuneAsked Of(Site site, string named, string since)
    {
        var rack = named.Length == 0 ? site.Racks[0]
            : site.Racks.FirstOrDefault(each => each.Name == named || each.Id.Index.ToString("0") == named);
        var isDay = LocalDatePattern.Iso.Parse(since).TryGetValue(default, out var day) && day >= earliest && day <= latest;
        string?[] wrong =
        [
            rack is null ? $"there is no rack `{named}`" : null,
            !isDay && since.Length > 0 ? $"`{since}` is no date: write it as 2026-11-30" : null,
        ];
        var complaint = string.Join("; ", wrong.OfType<string>());
        return new TuneAsked(rack ?? site.Racks[0], isDay ? day : null, complaint.Length > 0 ? complaint : null);
    }

    /// <summary>The first moment of it; null for the newest floods.</summary>
    /// <param name="zone">Where the site is.</param>
    public Instant? From(DateTimeZone zone) => Since?.AtStartOfDayInZone(zone).ToInstant();
}
