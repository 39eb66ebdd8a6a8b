using RackController.Model;

namespace RackController.Live;

/// <summary>Names as short as they can be without doubt.</summary>
internal static class Names
{
    /// <summary>The name of a load or sensor, without its rack where only one rack is shown.</summary>
    /// <param name="site">The site.</param>
    /// <param name="name">The whole name.</param>
    /// <param name="chosen">The only rack that is shown; null when all are.</param>
    public static string Short(Site site, string name, RackId? chosen)
    {
        var only = chosen ?? (site.Racks.Length == 1 ? new RackId(0) : (RackId?)null);
        return only is { } rack && name.StartsWith(site[rack].Name + "/", StringComparison.Ordinal)
            ? name[(site[rack].Name.Length + 1)..]
            : name;
    }
}
