using RackController.Model;

namespace RackController.RackFile;

/// <summary>What a site cannot see for want of a sensor.</summary>
public static class MissingSensors
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
        (SensorKind.AirTemperature, "air temperature", "turns the lights off before it gets too hot for the crop"),
        (SensorKind.WaterTemperature, "water temperature", "tells when the roots get too cold or too warm"),
    ];

    /// <summary>The sensors that are missing, and what each would buy.</summary>
    /// <param name="site">The site.</param>
    public static IEnumerable<(string What, string Buys)> Of(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return OfRacks(site).Concat(OfCircuits(site));
    }

    private static IEnumerable<(string What, string Buys)> OfRacks(Site site)
    {
        foreach (var rack in site.Racks)
        {
            foreach (var (kind, what, buys) in ofRack)
            {
                if (!site.Sensors.Any(sensor => sensor.Rack == rack.Id && sensor.Kind == kind))
                {
                    yield return ($"{rack.Name}, {what}", buys);
                }
            }
        }
    }

    private static IEnumerable<(string What, string Buys)> OfCircuits(Site site)
    {
        foreach (var circuit in site.Circuits)
        {
            if (circuit.SupplySense is null)
            {
                yield return (
                    $"{circuit.Name}, supply sense", "tells a breaker trip from a quiet night, and restarts loads one at a time");
            }

            if (!site.Sensors.Any(sensor => sensor.Kind == SensorKind.CircuitCurrent && sensor.Circuit == circuit.Id))
            {
                yield return ($"{circuit.Name}, current", "tells of a dead aerator, a welded relay and too much on the plug");
            }
        }
    }
}
