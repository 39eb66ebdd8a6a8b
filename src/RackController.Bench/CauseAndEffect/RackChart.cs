using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>The cause-and-effect chart of one rack, as engineers draw it: causes downwards, loads across, and where they cross what
/// the cause does to the load. Made from the table that the controller runs from.</summary>
/// <param name="Site">The site.</param>
/// <param name="Rack">The rack.</param>
/// <param name="Columns">The groups of loads, left to right.</param>
/// <param name="Lines">The rows that stand here, most serious first.</param>
/// <param name="Lacking">The rows that do not, because the rack lacks what they need.</param>
public sealed record RackChart(
    Site Site, Rack Rack, ImmutableArray<ChartColumn> Columns, ImmutableArray<ChartLine> Lines, ImmutableArray<ChartGap> Lacking)
{
    /// <summary>The charts of all racks of a site.</summary>
    /// <param name="site">The site, checked.</param>
    public static ImmutableArray<RackChart> AllOf(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        var table = CauseAndEffectTable.At(site);
        return [.. site.Racks.Select(rack => Of(site, rack, table))];
    }

    /// <summary>The chart of one rack, for people to read alone.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="rack">The rack.</param>
    public static RackChart Of(Site site, Rack rack) => Of(site, rack, CauseAndEffectTable.At(site));

    private static RackChart Of(Site site, Rack rack, ImmutableArray<RowAtSite> table)
    {
        var loads = site.Loads.Where(load => load.Rack == rack.Id).ToList();
        var circuits = loads.Select(load => load.Circuit).ToHashSet();
        ImmutableArray<ChartColumn> columns =
        [
            .. loads.GroupBy(load => load.Kind).OrderBy(group => group.Key)
                .Select(group => new ChartColumn(Title(group.Key, group.Count()), [.. group])),
        ];
        return new RackChart(
            site, rack, columns,
            [.. table.Select(row => ChartLine.Of(row, rack, circuits, columns)).OfType<ChartLine>()],
            [.. table.SelectMany(row => ChartGap.Of(row, site, rack, circuits))]);
    }

    private static string Title(LoadKind kind, int count)
    {
        var one = kind.ToString().ToLowerInvariant();
        return count > 1 ? one + "s" : one;
    }
}

/// <summary>Loads of one kind, side by side.</summary>
/// <param name="Title">What people call them.</param>
/// <param name="Loads">The loads.</param>
public sealed record ChartColumn(string Title, ImmutableArray<Load> Loads);

/// <summary>A row of the table that a rack lacks.</summary>
/// <param name="Row">The row.</param>
/// <param name="Place">Where it is lacking: the rack or one of its circuits.</param>
public sealed record ChartGap(CauseAndEffectRow Row, string Place)
{
    internal static IEnumerable<ChartGap> Of(RowAtSite at, Site site, Rack rack, HashSet<CircuitId> circuits)
    {
        var places = at.Row.Scope == RowScope.Circuit
            ? site.Circuits.Where(circuit => circuits.Contains(circuit.Id)).Select(circuit => circuit.Name)
            : [rack.Name];
        return places.Intersect(at.Lacking).Select(place => new ChartGap(at.Row, place));
    }
}
