using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What all floods of one rack came to.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Count">How many there were.</param>
/// <param name="Trays">What they did to each tray, bottom first.</param>
public sealed record FloodTotals(RackId Rack, int Count, ImmutableArray<TrayTotals> Trays)
{
    /// <summary>Those of a rack before its first flood.</summary>
    /// <param name="rack">The rack.</param>
    public static FloodTotals None(Rack rack)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return new(rack.Id, 0, [.. rack.Tiers.Select(tier => new TrayTotals(tier.Number, default, default, default))]);
    }

    /// <summary>With one flood more.</summary>
    /// <param name="flood">The flood.</param>
    public FloodTotals With(FloodRecord flood)
    {
        ArgumentNullException.ThrowIfNull(flood);
        return this with { Count = Count + 1, Trays = [.. Trays.Zip(flood.Trays, (totals, tray) => totals.With(tray))] };
    }
}

/// <summary>What all floods did to one tray.</summary>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
/// <param name="FilledMin">Time to fill, min, of those floods that filled it.</param>
/// <param name="DrainedMin">Time to drain, min, of those floods after which it drained.</param>
/// <param name="PeakMm">Greatest depth of each flood, mm.</param>
public readonly record struct TrayTotals(int TierNumber, Extent FilledMin, Extent DrainedMin, Extent PeakMm)
{
    internal TrayTotals With(TrayFlood tray) => this with
    {
        FilledMin = FilledMin.With(tray.Filled?.TotalMinutes),
        DrainedMin = DrainedMin.With(tray.Drained?.TotalMinutes),
        PeakMm = PeakMm.With(tray.PeakMm),
    };
}

/// <summary>The least and the most that a number was.</summary>
/// <param name="Range">Both; null before the first.</param>
public readonly record struct Extent((double Least, double Most)? Range)
{
    internal Extent With(double? value) => value is not { } known ? this
        : Range is not { } range ? new((known, known))
        : new((Math.Min(range.Least, known), Math.Max(range.Most, known)));
}
