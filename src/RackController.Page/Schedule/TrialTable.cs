using System.Collections.Immutable;
using System.Globalization;
using RackController.Model;

namespace RackController.Page;

/// <summary>A trial as rows of a table: what a week comes to now, and what it would come to.</summary>
internal static class TrialTable
{
    /// <summary>All rows. What is the same in both is said too: that nothing changes is an answer.</summary>
    public static ImmutableArray<TrialRow> Rows(Trial trial, ShownUnits units)
    {
        var litres = units.Of("L");
        var (was, will) = trial;
        var rows = new List<TrialRow>();
        AddAll(was?.Racks, will.Racks, rack => rack.Name, "floods a day", rack => rack.FloodsPerDay, "0.#");
        AddAll(was?.Tiers, will.Tiers, tier => tier.Name, "light, hours a day", tier => tier.LitHoursPerDay, "0.0");
        AddAll(was?.Tiers, will.Tiers, tier => tier.Name, "light, mol/m² a day", tier => tier.DailyMolPerM2, "0.0");
        AddAll(
            was?.Racks, will.Racks, rack => rack.Name, $"water used, {litres.Symbol} a week", rack => litres.From(rack.WaterUsedL), "0.0");
        AddAll(was?.Racks, will.Racks, rack => rack.Name, $"water spilled, {litres.Symbol}", rack => litres.From(rack.SpilledL), "0.0");
        AddAll(
            was?.Racks, will.Racks, rack => rack.Name, $"least in the reservoir, {litres.Symbol}",
            rack => litres.From(rack.LowestReservoirL), "0");
        AddAll(was?.Circuits, will.Circuits, circuit => circuit.Name, "electricity, kWh a week", circuit => circuit.EnergyKWh, "0.0");
        AddAll(was?.Circuits, will.Circuits, circuit => circuit.Name, "most current, A", circuit => circuit.PeakA, "0.0");
        AddAll(was?.Trips, will.Trips, tally => tally.Subject, "trips", tally => tally.Count, "0");
        AddAll(was?.Alarms, will.Alarms, tally => tally.Subject, "alarms", tally => tally.Count, "0");
        return [.. rows];

        void AddAll<T>(
            ImmutableArray<T>? before, ImmutableArray<T> after, Func<T, string> name, string what, Func<T, double> value, string format)
        {
            var old = (before ?? []).ToDictionary(name, value);
            var fresh = after.ToDictionary(name, value);
            foreach (var key in fresh.Keys.Union(old.Keys))
            {
                rows.Add(new TrialRow(key, what, Words(old, key, format), Words(fresh, key, format)));
            }
        }
    }

    private static string Words(Dictionary<string, double> of, string key, string format) =>
        of.TryGetValue(key, out var value) ? value.ToString(format, CultureInfo.InvariantCulture) : "none";
}

/// <summary>One figure of a trial.</summary>
/// <param name="Subject">Of what.</param>
/// <param name="What">What it is, with its unit.</param>
/// <param name="AsItIs">Now.</param>
/// <param name="AsDrafted">With the draft.</param>
public sealed record TrialRow(string Subject, string What, string AsItIs, string AsDrafted)
{
    /// <summary>Whether the draft changes it.</summary>
    public bool IsChanged => AsItIs != AsDrafted;
}
