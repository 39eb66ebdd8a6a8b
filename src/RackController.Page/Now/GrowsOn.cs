using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What grows on each tier, in the few words that a drawing has room for.</summary>
internal sealed class GrowsOn
{
    // So wide is a tray in the drawing.
    private const int MostCharacters = 32;

    private readonly ILookup<string, Standing> standing;
    private readonly LocalDate today;

    private GrowsOn(ImmutableArray<Standing> standing, LocalDate today, string? fault)
    {
        this.standing = standing.ToLookup(one => one.Tier, StringComparer.Ordinal);
        this.today = today;
        Fault = fault;
    }

    /// <summary>Why it cannot be told; null when it can.</summary>
    public string? Fault { get; }

    /// <summary>Looks at the book.</summary>
    /// <param name="books">The growing book; null for none.</param>
    /// <param name="site">The site.</param>
    /// <param name="now">The time.</param>
    public static GrowsOn Look(BookDesk? books, Site site, Instant now)
    {
        var today = now.InZone(site.Zone).Date;
        try
        {
            return new GrowsOn(books?.Look().StandingOn(today, site.Batches.MovesByDate) ?? [], today, null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new GrowsOn([], today, "the growing book cannot be read");
        }
    }

    /// <summary>What grows on a tier: <c>radish day 5, pea day 3</c>; empty where nothing does.</summary>
    /// <param name="rack">Its rack.</param>
    /// <param name="tier">Its number.</param>
    public string Words(Rack rack, int tier)
    {
        var here = standing[SiteTiers.NameOf(rack, tier)].Select(one =>
            $"{one.Batch.Start.Crop} day {Period.DaysBetween(one.Batch.Sown!.Day, today)}").Distinct(StringComparer.Ordinal).ToList();
        var all = string.Join(", ", here);
        return all.Length <= MostCharacters ? all
            : here.Count == 1 ? all[..(MostCharacters - 1)] + "…"
            : $"{here[0]} and {here.Count - 1} more";
    }
}
