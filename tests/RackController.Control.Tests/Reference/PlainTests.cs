using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Which proof tests belong to a rack or circuit, and how often each is due.</summary>
internal static class PlainTests
{
    public static IEnumerable<(string Name, List<(string Item, Duration Interval)> Items)> Places(Site site) =>
    [
        .. site.Racks.Select(rack => (rack.Name, OfRack(site, rack).ToList())),
        .. site.Circuits.Select(circuit => (circuit.Name, OfCircuit(site, circuit).ToList())),
    ];

    private static IEnumerable<(string, Duration)> OfRack(Site site, Rack rack) =>
    [
        .. site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.IsContact).Select(sensor => (
            sensor.Name,
            sensor.Kind == SensorKind.LeakRope ? rack.Limits.LeakRopeTestInterval : rack.Limits.FloatTestInterval)),
        .. site.Racks.Where(each => each == rack && rack.FloatCutout is not null)
            .Select(each => (FloatCutout.NameAt(each), each.Limits.FloatTestInterval)),
        .. site.Racks.Where(each => each == rack && rack.TimeCutout is not null)
            .Select(each => (TimeCutout.NameAt(each), each.Limits.RelayTestInterval)),
        .. site.Loads.Where(load => load.Rack == rack.Id).Select(load => (load.Name, rack.Limits.RelayTestInterval)),
    ];

    // A circuit goes by the most careful of the racks that draw from it.
    private static IEnumerable<(string, Duration)> OfCircuit(Site site, Circuit circuit)
    {
        var loads = site.Loads.Where(load => load.Circuit == circuit.Id).ToList();
        var limits = loads.Select(load => site[load.Rack].Limits).DefaultIfEmpty(InterlockLimits.Default).ToList();
        bool IsItsMeter(Sensor sensor) => loads.Count > 0
            && ((sensor.Kind == SensorKind.CircuitCurrent && sensor.Circuit == circuit.Id)
                || (sensor.Kind == SensorKind.PumpCurrent && site[site[sensor.Rack!.Value].Pump.Load].Circuit == circuit.Id));
        return
        [
            .. site.Sensors.Where(sensor => sensor.Kind == SensorKind.SupplySense && sensor.Circuit == circuit.Id)
                .Select(sensor => (sensor.Name, limits.Min(each => each.SupplySenseTestInterval))),
            .. site.Sensors.Where(IsItsMeter).Select(sensor => (sensor.Name, limits.Min(each => each.CurrentTestInterval))),
        ];
    }
}
