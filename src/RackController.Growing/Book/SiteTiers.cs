using RackController.Model;

namespace RackController.Growing;

/// <summary>Tiers by the names that plan and book know them by: <c>north/tier 2</c>.</summary>
public static class SiteTiers
{
    /// <summary>The name of a tier.</summary>
    /// <param name="rack">Its rack.</param>
    /// <param name="tier">Its number, 1 at the bottom.</param>
    public static string NameOf(Rack rack, int tier)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return NameOf(rack.Name, tier);
    }

    /// <summary>The name of a tier.</summary>
    /// <param name="rack">The name of its rack.</param>
    /// <param name="tier">Its number, 1 at the bottom.</param>
    public static string NameOf(string rack, int tier) => $"{rack}/tier {tier}";

    /// <summary>The tier of a name; null where the site has none.</summary>
    /// <param name="site">The site.</param>
    /// <param name="name">The name.</param>
    public static (Rack Rack, Tier Tier)? Find(Site site, string name)
    {
        ArgumentNullException.ThrowIfNull(site);
        foreach (var rack in site.Racks)
        {
            foreach (var tier in rack.Tiers)
            {
                if (NameOf(rack, tier.Number) == name)
                {
                    return (rack, tier);
                }
            }
        }

        return null;
    }

    /// <summary>How many insert trays stand on the tier of a name; null where the site has none.</summary>
    /// <param name="site">The site.</param>
    /// <param name="name">The name.</param>
    public static int? PlacesOn(Site site, string name) => Find(site, name)?.Tier.Tray.Contents.InsertTrays;
}
