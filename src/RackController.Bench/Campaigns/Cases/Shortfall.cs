using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What crops went short of in a run, beside the days on which nothing fails.</summary>
/// <param name="Subject">Whose it was: a tray or a load.</param>
/// <param name="Words">How much, in words.</param>
internal sealed record Shortfall(string Subject, string Words)
{
    // A flood at either end of the run may have begun before it, or end after it.
    private static readonly Duration forgiven = Duration.FromMinutes(30);

    // Shorter than this, no crop suffers; common practice, no source.
    private static readonly Duration borne = Duration.FromHours(2);

    /// <summary>The first shortfall; null where there is none.</summary>
    /// <param name="site">The site.</param>
    /// <param name="owed">What crops get when nothing fails.</param>
    /// <param name="given">What they got.</param>
    /// <param name="from">From when.</param>
    /// <param name="until">Until when.</param>
    /// <param name="floodsMoved">How many floods may be lost to a clock that steps, which can move a flood past its day.</param>
    public static Shortfall? Of(Site site, CropDuties owed, CropDuties given, Instant from, Instant until, int floodsMoved)
    {
        foreach (var rack in site.Racks)
        {
            foreach (var tier in rack.Tiers)
            {
                var due = owed.Wetted(rack.Id, tier.Number - 1).Count(at => at >= from + forgiven && at < until - forgiven) - floodsMoved;
                var had = given.Wetted(rack.Id, tier.Number - 1).Count;
                if (had < due)
                {
                    var tray = $"the tray of {rack.Name}/tier {tier.Number}";
                    return new Shortfall(tray, $"{tray} got {had} of the {due} fills that it was due");
                }
            }
        }

        foreach (var load in site.Loads.Where(load => load.Kind is LoadKind.Light or LoadKind.Fan or LoadKind.Aerator))
        {
            var missing = owed.Powered(load.Id, from, until) - given.Powered(load.Id, from, until);
            if (missing > borne)
            {
                return new Shortfall(load.Name, $"{load.Name} did nothing for {Spans.Words(missing)} in which it should have");
            }
        }

        return null;
    }
}
