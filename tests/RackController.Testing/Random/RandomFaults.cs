using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Testing;

/// <summary>Random faults of a site, of every kind that its parts can have.</summary>
public static class RandomFaults
{
    /// <summary>A fault that begins within a length of time. Half of them begin and end on whole seconds, half at times such as
    /// 3.14159 s, which no scan falls on.</summary>
    /// <param name="site">The site.</param>
    /// <param name="length">The length of time.</param>
    /// <param name="longest">How long one lasts at most.</param>
    public static Gen<Fault> Of(Site site, Duration length, Duration longest)
    {
        var possible = FaultCatalogue.Entries.Where(entry => entry.Place switch
        {
            FaultPlace.Contact => site.Sensors.Any(sensor => sensor.IsContact),
            FaultPlace.MeasuringSensor => site.Sensors.Any(sensor => !sensor.IsContact),
            FaultPlace.Sensor => site.Sensors.Length > 0,
            FaultPlace.FloatCutout => site.Racks.Any(rack => rack.FloatCutout is not null),
            FaultPlace.TimeCutout => site.Racks.Any(rack => rack.TimeCutout is not null),
            FaultPlace.Valve => site.Loads.Any(load => load.Kind == LoadKind.Valve),
            _ => true,
        }).ToArray();
        return
            from entry in Gen.OneOf(possible)
            from fromS in Time(0, length.TotalSeconds)
            from forS in Gen.Frequency((3, Time(1, 600)), (1, Time(0.001, 5)), (1, Time(1, longest.TotalSeconds + 1)))
            from share in RandomParts.Share
            from place in Gen.Int[0, 10_000]
            let begins = MonotonicTime.Zero + Duration.FromSeconds(fromS)
            select new Fault(entry.Kind, begins, begins + Duration.FromSeconds(forS))
            {
                Size = Size(entry, share),
                Rack = RackAt(site, entry.Place, place),
                TierNumber = 1 + place / 3 % site.Racks[place % site.Racks.Length].Tiers.Length,
                Circuit = new CircuitId(place % site.Circuits.Length),
                Load = LoadAt(site, entry.Place, place),
                Sensor = SensorAt(site, entry.Place, place),
            };
    }

    private static Gen<double> Time(double low, double high) =>
        Gen.Select(RandomParts.Anywhere(low, high), Gen.Bool).Select((seconds, isWhole) => isWhole ? Math.Ceiling(seconds) : seconds);

    // Sizes that leave something to see; the bounds of some reach far beyond what a rack can feel.
    private static double Size(FaultEntry entry, double share) => entry.Kind switch
    {
        FaultKind.SensorNoise => 10 * share * share,
        FaultKind.SensorDrift or FaultKind.SensorOffset => 400 * (share - 0.5),
        FaultKind.TrayLeak => 60 * share * share,
        FaultKind.FloatSlow => 100 * share * share,
        FaultKind.ReservoirEmptied or FaultKind.ReservoirRefilled => 300 * share * share,
        FaultKind.EarthLeakage => 40 * share,
        FaultKind.TimeCutoutTurned => 1 + 2000 * share * share,
        _ => entry.SizeMin + share * (entry.SizeMax - entry.SizeMin),
    };

    private static RackId RackAt(Site site, FaultPlace place, int draw)
    {
        var fitting = site.Racks.Where(rack => place switch
        {
            FaultPlace.FloatCutout => rack.FloatCutout is not null,
            FaultPlace.TimeCutout => rack.TimeCutout is not null,
            _ => true,
        }).ToImmutableArray();
        return fitting[draw % fitting.Length].Id;
    }

    private static LoadId LoadAt(Site site, FaultPlace place, int draw)
    {
        var fitting = site.Loads.Where(load => place switch
        {
            FaultPlace.Valve => load.Kind == LoadKind.Valve,
            FaultPlace.Motor => load.Kind is LoadKind.Pump or LoadKind.Fan or LoadKind.Aerator,
            _ => true,
        }).ToImmutableArray();
        return fitting[draw % fitting.Length].Id;
    }

    private static SensorId? SensorAt(Site site, FaultPlace place, int draw)
    {
        var fitting = site.Sensors.Where(sensor => place switch
        {
            FaultPlace.Contact => sensor.IsContact,
            FaultPlace.MeasuringSensor => !sensor.IsContact,
            _ => true,
        }).ToImmutableArray();
        return fitting.Length == 0 ? null : fitting[draw % fitting.Length].Id;
    }
}
