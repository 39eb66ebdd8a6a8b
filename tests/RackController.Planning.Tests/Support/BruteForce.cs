using System.Collections.Immutable;
using RackController.Growing;

namespace RackController.Planning.Tests;

/// <summary>
/// The fewest lit tier-days by trying everything: every batch at every day, every day every tray on every tier. It is slow, shares
/// nothing with the solver's model, and is right by being simple.
/// </summary>
internal sealed class BruteForce(GrowSpace space, ImmutableArray<(Batch Batch, ImmutableArray<BatchTiming> Timings)> batches)
{
    private readonly Dictionary<string, int?> packed = [];

    /// <summary>The fewest lit tier-days at which all batches find room; null where they do not.</summary>
    public int? Fewest() => Fewest([]);

    private int? Fewest(ImmutableArray<BatchTiming> chosen)
    {
        if (chosen.Length == batches.Length)
        {
            return Cost(chosen);
        }

        int? fewest = null;
        foreach (var timing in batches[chosen.Length].Timings)
        {
            if (Fewest(chosen.Add(timing)) is { } cost && (fewest is null || cost < fewest))
            {
                fewest = cost;
            }
        }

        return fewest;
    }

    private int? Cost(ImmutableArray<BatchTiming> chosen)
    {
        var first = chosen.Min(timing => timing.Sow);
        var last = chosen.Max(timing => timing.Harvest);
        var cost = 0;
        for (var day = first; day < last; day = day.PlusDays(1))
        {
            var dark = chosen.Select((timing, index) => day >= timing.Sow && day < timing.Lit ? batches[index].Batch.Trays : 0).Sum();
            if (dark > space.DarkTrays)
            {
                return null;
            }

            var trays = chosen.SelectMany((timing, index) => timing.StageOn(day) is { } stage
                ? Enumerable.Repeat(batches[index].Batch.Crop.LitStages[stage], batches[index].Batch.Trays) : []).ToList();
            if (TiersFor(trays) is not { } tiers)
            {
                return null;
            }

            cost += tiers;
        }

        return cost;
    }

    // Trays of one stage are alike, so a day is told by how many of each there are.
    private int? TiersFor(List<LitStage> trays)
    {
        var key = string.Join(';', trays.Select(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode).Order());
        if (!packed.TryGetValue(key, out var tiers))
        {
            packed.Add(key, tiers = Pack(trays, 0, [.. space.Tiers.Select(_ => new List<LitStage>())]));
        }

        return tiers;
    }

    private int? Pack(List<LitStage> trays, int next, List<LitStage>[] standing)
    {
        if (next == trays.Count)
        {
            return standing.Count(tier => tier.Count > 0);
        }

        int? fewest = null;
        for (var tier = 0; tier < standing.Length; tier++)
        {
            var kind = space.Tiers[tier].Kind;
            if (standing[tier].Count < kind.Places && Suits([.. standing[tier], trays[next]], kind))
            {
                standing[tier].Add(trays[next]);
                fewest = Pack(trays, next + 1, standing) is { } tiers && (fewest is null || tiers < fewest) ? tiers : fewest;
                standing[tier].RemoveAt(standing[tier].Count - 1);
            }
        }

        return fewest;
    }

    // Whether some length of day suits all: if any does, one at the beginning of somebody's range does.
    private static bool Suits(IReadOnlyList<LitStage> stages, TierKind kind)
    {
        var molPerH = kind.PpfdUmolPerM2S * 3600 / 1e6;
        bool Bears(LitStage stage, double hours) => hours >= stage.PhotoperiodH.Least - 1e-6 && hours <= stage.PhotoperiodH.Most + 1e-6
            && hours * molPerH >= stage.DailyLightMolPerM2D.Least - 1e-6 && hours * molPerH <= stage.DailyLightMolPerM2D.Most + 1e-6
            && stage.PpfdUmolPerM2S.Least <= kind.PpfdUmolPerM2S && kind.PpfdUmolPerM2S <= stage.PpfdUmolPerM2S.Most
            && stage.Floods[0].PerDay.Least <= kind.FloodsPerDay && kind.FloodsPerDay <= stage.Floods[0].PerDay.Most;
        return stages.SelectMany(stage => new[] { stage.PhotoperiodH.Least, stage.DailyLightMolPerM2D.Least / molPerH })
            .Any(hours => stages.All(stage => Bears(stage, hours)));
    }
}
