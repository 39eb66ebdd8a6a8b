using System.Collections.Immutable;
using NodaTime;

namespace RackController.Service;

/// <summary>What of a flood is compared with earlier ones.</summary>
public enum DriftOf
{
    /// <summary>How long a tier takes to fill.</summary>
    TierFill,

    /// <summary>How long a tier takes to drain.</summary>
    TierDrain,

    /// <summary>How long the whole fill takes, where it ends when every tray is full.</summary>
    Fill,

    /// <summary>How much water it takes.</summary>
    Volume,
}

/// <summary>
/// That the last floods differ from those of the month before. Both sides are medians, so that one odd flood is no drift; and on both
/// the same tiers are at rest, for the others share the pump.
/// </summary>
/// <param name="Of">What differs.</param>
/// <param name="Tier">Of which tier; null where it is of the whole rack.</param>
/// <param name="Before">The median of the month before: seconds, or litres.</param>
/// <param name="Lately">The median of the last floods.</param>
public sealed record FloodDrift(DriftOf Of, int? Tier, double Before, double Lately)
{
    /// <summary>So many floods at the least are compared on either side.</summary>
    public const int LeastFloods = 10;

    /// <summary>A change of less is not told, in percent: pumps and screens scatter by some (common practice, no source).</summary>
    public const int LeastPercent = 20;

    /// <summary>When the rack was fitted whose fit foretold <see cref="Before"/>; null where that was measured.</summary>
    public LocalDate? FittedOn { get; init; }

    private static readonly Duration before = Duration.FromDays(30);

    /// <summary>How much more it is now, in percent; less where negative.</summary>
    public double Percent => (Lately / Before - 1) * 100;

    /// <summary>Compares.</summary>
    /// <param name="floods">The floods of a rack, oldest first.</param>
    public static ImmutableArray<FloodDrift> In(IReadOnlyList<FloodRecord> floods)
    {
        ArgumentNullException.ThrowIfNull(floods);
        var tiers = floods.SelectMany(flood => flood.Tiers.Select(tier => tier.Number)).Distinct().Order();
        var found = tiers.SelectMany(number => (FloodDrift?[])
        [
            Between(floods, DriftOf.TierFill, number, flood => TierOf(flood, number)?.FullAfter?.TotalSeconds),
            Between(floods, DriftOf.TierDrain, number, flood => TierOf(flood, number)?.EmptyAfter?.TotalSeconds),
        ]);
        return
        [
            .. found.Append(Between(floods, DriftOf.Fill, null, flood => flood.Fill?.TotalSeconds))
                .Append(Between(floods, DriftOf.Volume, null, flood => flood.VolumeL)).OfType<FloodDrift>(),
        ];
    }

    /// <summary>The drift of one figure; null where there is none, or too few floods tell.</summary>
    private static FloodDrift? Between(IReadOnlyList<FloodRecord> floods, DriftOf of, int? tier, Func<FloodRecord, double?> figure)
    {
        var alike = floods.LastOrDefault(flood => flood.Resting is not null)?.Resting;
        var told = floods.Where(flood => figure(flood) is > 0 && flood.Resting == alike).ToList();
        if (told.Count < 2 * LeastFloods)
        {
            return null;
        }

        var lately = told[^LeastFloods..];
        var earlier = told[..^LeastFloods].Where(flood => lately[0].At - flood.At <= before).ToList();
        if (earlier.Count < LeastFloods)
        {
            return null;
        }

        double MedianOf(List<FloodRecord> some) => Median(some.Select(flood => figure(flood)!.Value));
        var drift = new FloodDrift(of, tier, MedianOf(earlier), MedianOf(lately));
        return Math.Abs(drift.Lately - drift.Before) * 100 >= LeastPercent * drift.Before ? drift : null;
    }

    private static TierFlood? TierOf(FloodRecord flood, int number) => flood.Tiers.FirstOrDefault(tier => tier.Number == number);

    /// <summary>The middle of some values, of which there is at least one.</summary>
    internal static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}
