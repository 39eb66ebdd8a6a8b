using RackController.Model;
using RackController.RackFile.Building;

namespace RackController.RackFile;

/// <summary>A sensor, contactor or wired part that a site lacks.</summary>
/// <param name="What">Which, and where: <c>north, leak rope in the drip tray or on the floor</c>.</param>
/// <param name="Buys">What it would do for the grower.</param>
/// <param name="Fitted">The same site with it, where such sensors sit by common practice.</param>
public sealed record MissingPart(string What, string Buys, Site Fitted)
{
    /// <summary>Whether it acts by itself, so that harm which it alone keeps off is its gain.</summary>
    public bool IsWired { get; init; }
}

/// <summary>What a site cannot see or do for want of a sensor, a contactor or a wired part.</summary>
public static class MissingParts
{
    private static readonly (SensorKind Kind, string What, string Buys)[] ofRack =
    [
        (SensorKind.ReservoirLowFloat, "low float in the reservoir", "stops the pump before it runs dry"),
        (SensorKind.TrayHighFloat, "high float above a standpipe", "stops the pump before a blocked drain overflows a tray"),
        (SensorKind.LeakRope, "leak rope in the drip tray or on the floor", "stops the pump when water lies where it should not"),
        (SensorKind.DripTrayFloat, "float in a drip tray", "stops the pump when a leak rope has failed, while the floor is still dry"),
        (SensorKind.ReservoirLevel, "level of the reservoir", "stops a pump that moves no water, and one whose low float is stuck"),
        (SensorKind.PumpCurrent, "current in the pump's own wire", "tells whether the pump runs, whatever its relay was told"),
        (SensorKind.TrayFullFloat, "full float in the trays", "ends a fill when the trays are full, and tells of one that never is"),
        (SensorKind.LightLevel, "light sensor at each canopy", "tells of a lamp that has died, and of one that nobody puts out"),
        (SensorKind.AirTemperature, "air temperature", "turns the lights off before it gets too hot for the crop"),
        (SensorKind.WaterTemperature, "water temperature", "tells when the roots get too cold or too warm"),
    ];

    private static readonly (SensorKind Kind, string What, string Buys)[] ofCircuit =
    [
        (SensorKind.SupplySense, "supply sense", "tells a breaker trip from a quiet night, and restarts loads one at a time"),
        (SensorKind.CircuitCurrent, "current", "tells of a dead aerator, a welded relay and too much on the plug"),
    ];

    /// <summary>The parts that are missing, and what each would buy.</summary>
    /// <param name="site">The site.</param>
    public static IEnumerable<MissingPart> Of(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return OfRacks(site).Concat(OfCircuits(site)).Concat(Contactors(site)).Concat(Wired(site));
    }

    private static IEnumerable<MissingPart> OfRacks(Site site) =>
        from rack in site.Racks
        from one in ofRack
        where !site.Sensors.Any(sensor => sensor.Rack == rack.Id && sensor.Kind == one.Kind)
        where one.Kind != SensorKind.LightLevel || rack.Tiers.Any(tier => tier.InUse && tier.LitLux > 0)
        select new MissingPart($"{rack.Name}, {one.What}", one.Buys, Fitting.AtRack(site, rack, one.Kind));

    private static IEnumerable<MissingPart> OfCircuits(Site site) =>
        from circuit in site.Circuits
        from one in ofCircuit
        where !site.Sensors.Any(sensor => sensor.Circuit == circuit.Id && sensor.Kind == one.Kind)
        select new MissingPart($"{circuit.Name}, {one.What}", one.Buys, Fitting.AtCircuit(site, circuit, one.Kind));

    // It cuts what somebody sees to be running, which takes the current of each pump that it can cut.
    private static IEnumerable<MissingPart> Contactors(Site site) =>
        from circuit in site.Circuits
        where !circuit.HasUpstreamContactor && site.Racks.Any(rack => site[rack.Pump.Load].Circuit == circuit.Id)
        select new MissingPart(
            $"{circuit.Name}, contactor upstream, and the current of its pumps", "cuts off a pump whose relay has welded",
            Fitting.Contactor(site, circuit));

    private static IEnumerable<MissingPart> Wired(Site site) =>
    [
        .. from rack in site.Racks
           where rack.FloatCutout is null
           select new MissingPart(
               $"{rack.Name}, float in the pump's own wire", "stops the pump when water lies in the drip tray, without the controller",
               Fitting.FloatCutout(site, rack)) { IsWired = true },
        .. from rack in site.Racks
           where rack.TimeCutout is null
           select new MissingPart(
               $"{rack.Name}, time relay in the pump's own wire", "stops a pump whose relay has welded, without the controller",
               Fitting.TimeCutout(site, rack)) { IsWired = true },
    ];
}
