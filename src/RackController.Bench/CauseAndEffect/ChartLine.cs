using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>One cause of a rack's chart.</summary>
/// <param name="Row">The row of the table.</param>
/// <param name="Cause">What sets it off here.</param>
/// <param name="Settings">The limits that it keeps here, in words; empty when it has none.</param>
/// <param name="Effects">What it does, column by column; empty where it does nothing.</param>
public sealed record ChartLine(CauseAndEffectRow Row, string Cause, string Settings, ImmutableArray<string> Effects)
{
    internal static ChartLine? Of(RowAtSite at, Rack rack, HashSet<CircuitId> circuits, ImmutableArray<ChartColumn> columns)
    {
        // What stands at the controller is everybody's.
        var here = at.Stands
            .Where(stand => (stand.Rack ?? rack.Id) == rack.Id && (stand.Circuit is not { } circuit || circuits.Contains(circuit)))
            .ToList();
        return here.Count == 0
            ? null
            : new ChartLine(
                at.Row, at.Row.Cause, string.Join("; or ", here.Select(stand => stand.Settings).Distinct()),
                [.. columns.Select(column => Effect(at.Row, here, column))]);
    }

    private static string Effect(CauseAndEffectRow row, List<RowStand> here, ChartColumn column)
    {
        var word = row.Effect == RowEffect.SafeState ? "safe" : "off";
        var all = column.Loads.Select(load => load.Id).ToList();
        var touched = all.Where(load => here.Any(stand => stand.Loads.Contains(load))).ToList();
        if (touched.Count == 0)
        {
            return "";
        }

        var isWhole = here.TrueForAll(stand => !stand.Loads.Intersect(all).Any() || all.TrueForAll(stand.Loads.Contains));
        return isWhole ? word : touched.Count == all.Count ? $"{word} there" : $"{word}: {Names(column, touched)}";
    }

    private static string Names(ChartColumn column, List<LoadId> touched) => string.Join(", ", column.Loads
        .Where(load => touched.Contains(load.Id))
        .Select(load => load.TierNumber is { } tier ? $"tier {tier}" : load.Name[(load.Name.LastIndexOf('/') + 1)..]));
}
