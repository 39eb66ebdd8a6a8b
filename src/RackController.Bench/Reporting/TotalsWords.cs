namespace RackController.Bench;

/// <summary>What a run came to in words, the same on the terminal and on the page.</summary>
public static class TotalsWords
{
    /// <summary>How much water a rack took.</summary>
    /// <param name="result">The run.</param>
    /// <param name="rack">One of its racks.</param>
    public static string Of(RunResult result, RackTotals rack)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(rack);
        var caught = rack.DripTrayL > 0 ? $"{rack.DripTrayL:0.0} L in the drip tray, " : "";
        var wired = rack.WiredFloatOpenedAfter is { } opened ? $", the wired float opened after {Spans.Words(opened)}" : "";
        wired += rack.WiredTimeRelayOpenedAfter is { } timed ? $", the wired time relay opened after {Spans.Words(timed)}" : "";
        return $"{result.Scenario.Site[rack.Rack].Name}: {rack.WaterUsedL:0.0} L of water used, {rack.SpilledL:0.0} L spilled, "
            + $"{caught}reservoir never below {rack.Reservoir.LowestL:0} L{wired}";
    }

    /// <summary>How the water in a rack's reservoir was.</summary>
    /// <param name="result">The run.</param>
    /// <param name="rack">One of its racks.</param>
    public static string Reservoir(RunResult result, RackTotals rack)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(rack);
        var reservoir = rack.Reservoir;
        return $"{result.Scenario.Site[rack.Rack].Name}: water at most {reservoir.WarmestC:0.0} °C, never below "
            + $"{reservoir.LowestOxygenMgPerL:0.0} mg/L of oxygen, {reservoir.ConductivityMsPerCm:0.00} mS/cm at the end";
    }

    /// <summary>What each circuit gave, and where there are several all of them.</summary>
    /// <param name="result">The run.</param>
    public static IEnumerable<string> Energy(RunResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var each = result.Circuits.Select(
            circuit => $"{result.Scenario.Site[circuit.Circuit].Name}: {circuit.EnergyKWh:0.0} kWh drawn");
        return result.Circuits.Length == 1
            ? each
            : each.Append($"{result.Circuits.Sum(circuit => circuit.EnergyKWh):0.0} kWh drawn in all");
    }

    /// <summary>What happened how often, in a row.</summary>
    /// <param name="tallies">The counts.</param>
    public static string Listed(IReadOnlyList<Tally> tallies)
    {
        ArgumentNullException.ThrowIfNull(tallies);
        return tallies.Count == 0
            ? "none"
            : string.Join(", ", tallies.Select(tally => tally.Count == 1 ? tally.Subject : $"{tally.Subject} ({tally.Count})"));
    }
}
