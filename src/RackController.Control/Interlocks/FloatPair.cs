using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Floats of one vessel, or a low float and the reservoir's level, that may contradict each other.</summary>
/// <param name="Floats">The floats of it, which must then pass a proof test.</param>
/// <param name="IsContradictory">Whether they do by what is known of them.</param>
/// <param name="Words">What they say then.</param>
internal sealed record FloatPair(ImmutableArray<Sensor> Floats, Func<Facts, bool> IsContradictory, string Words)
{
    // Floats are mounted to within a few millimetres, and switch a few further on the way down than on the way up: common practice,
    // no source.
    private const double FloatMarginMm = 10;

    // A float that reads wet this far above the level that is measured is not merely mounted badly: common practice, no source.
    private const double LevelMarginMm = 20;

    /// <summary>Every vessel of a rack that has such pairs: its reservoir, which goes by the rack's name, and its trays.</summary>
    public static IEnumerable<(Place Vessel, ImmutableArray<FloatPair> Pairs)> Of(InterlockSite site, Rack rack)
    {
        var levels = from level in site.SensorsOf(rack, SensorKind.ReservoirLevel)
                     from low in site.SensorsOf(rack, SensorKind.ReservoirLowFloat)
                     select OfLevel(site, low, level);
        var reservoir = OfFloats(site.SensorsOf(rack, SensorKind.ReservoirLowFloat, SensorKind.ReservoirFullFloat));
        var trays = from each in site.SensorsOf(rack, SensorKind.TrayFullFloat, SensorKind.TrayHighFloat)
                    group each by each.TierNumber!.Value into tray
                    select (Place.Of(rack, tray.Key), OfFloats(tray).ToImmutableArray());
        return trays.Prepend((Place.Of(rack), [.. reservoir, .. levels])).Where(at => at.Item2.Length > 0);
    }

    private static IEnumerable<FloatPair> OfFloats(IEnumerable<Sensor> floats) =>
        from lower in floats
        from upper in floats
        where lower.HeightMm + FloatMarginMm <= upper.HeightMm
        select new FloatPair(
            [lower, upper], facts => facts.IsOpen(lower.Id) && facts.IsClosed(upper.Id),
            $"{upper.Name} is wet while {lower.Name} is dry");

    // That it reads dry with water round it costs floods, of which its own row tells; only that it reads wet costs the pump.
    private static FloatPair OfLevel(InterlockSite site, Sensor low, Sensor level)
    {
        var below = site.Limit(level, low.HeightMm - LevelMarginMm);
        return new FloatPair(
            [low], facts => facts.IsClosed(low.Id) && facts.IsKnown(level.Id) && facts.IsBelow(below),
            $"{low.Name} is wet while {level.Name} is far below it");
    }
}
