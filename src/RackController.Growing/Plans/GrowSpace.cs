using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Growing;

/// <summary>What makes a tier like another, as far as a crop can tell.</summary>
/// <param name="Places">How many insert trays stand in its flood tray, from 1.</param>
/// <param name="PpfdUmolPerM2S">Photon flux density at the canopy with the lamp on, above 0.</param>
/// <param name="FloodsPerDay">How often its rack is flooded.</param>
/// <param name="Media">What crops root in there, in the grower's words.</param>
public sealed record TierKind(int Places, double PpfdUmolPerM2S, int FloodsPerDay, string Media);

/// <summary>A lit tier that crops can stand on.</summary>
/// <param name="Rack">The name of its rack.</param>
/// <param name="Number">Its number, 1 at the bottom.</param>
/// <param name="Kind">What it is like.</param>
/// <param name="ScheduledH">How many hours a day the rack file lights it.</param>
public sealed record GrowTier(string Rack, int Number, TierKind Kind, double ScheduledH)
{
    /// <summary>Rack and tier: <c>north/tier 2</c>.</summary>
    public string Name => SiteTiers.NameOf(Rack, Number);
}

/// <summary>All the room that a plan has.</summary>
/// <param name="Tiers">The lit tiers, rack by rack, the top one of a rack first.</param>
/// <param name="DarkTrays">How many insert trays fit into blackout space.</param>
public sealed record GrowSpace(ImmutableArray<GrowTier> Tiers, int DarkTrays)
{
    /// <summary>The tiers of a site that are in use, have a lamp, and hold insert trays.</summary>
    /// <param name="site">The site.</param>
    /// <param name="darkTrays">How many insert trays fit into blackout space, from 0.</param>
    public static GrowSpace Of(Site site, int darkTrays)
    {
        ArgumentNullException.ThrowIfNull(site);
        return new GrowSpace([.. site.Racks.SelectMany(TiersOf)], darkTrays);
    }

    private static IEnumerable<GrowTier> TiersOf(Rack rack)
    {
        var floods = rack.OwnSchedule.Starts().Length;
        foreach (var tier in rack.Tiers.Reverse())
        {
            var contents = tier.Tray.Contents;
            if (tier.InUse && tier.Light is not null && tier.PpfdUmolPerM2S > 0 && contents.InsertTrays > 0)
            {
                yield return new GrowTier(
                    rack.Name, tier.Number,
                    new TierKind(contents.InsertTrays, tier.PpfdUmolPerM2S, floods, contents.Media),
                    rack.OwnSchedule.Lights[tier.Number - 1]?.Length.TotalHours ?? 0);
            }
        }
    }
}
