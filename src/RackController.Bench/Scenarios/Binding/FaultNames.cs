using System.Text;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench.Binding;

/// <summary>How a scenario writes faults: <c>RelayWelded</c> is <c>relay-welded</c>.</summary>
internal static class FaultNames
{
    public static string Of(FaultKind kind)
    {
        var name = new StringBuilder();
        foreach (var letter in kind.ToString())
        {
            name.Append(char.IsUpper(letter) && name.Length > 0 ? "-" : "").Append(char.ToLowerInvariant(letter));
        }

        return name.ToString();
    }

    public static string PlaceOf(FaultKind kind) => FaultCatalogue.Entry(kind).Place switch
    {
        FaultPlace.Site => "site (no place at all)",
        FaultPlace.Rack => "rack",
        FaultPlace.Tier => "tier",
        FaultPlace.FloatCutout => "rack (one with a float in its pump's wire)",
        FaultPlace.TimeCutout => "rack (one with a time relay in its pump's wire)",
        FaultPlace.Circuit => "circuit",
        FaultPlace.Load => "load",
        FaultPlace.Motor => "load (a pump, fan or aerator)",
        FaultPlace.Valve => "load (a tier valve)",
        FaultPlace.Contact => "sensor (a contact)",
        FaultPlace.MeasuringSensor => "sensor (one that measures)",
        FaultPlace.Sensor => "sensor",
        _ => throw new InvariantBrokenException($"every place of a fault has its name, {kind} too"),
    };

    public static string Where(Site site, Fault fault) =>
        fault.Load is { } load ? site[load].Name
        : fault.Sensor is { } sensor ? site[sensor].Name
        : fault.Circuit is { } circuit ? site[circuit].Name
        : fault.Rack is { } rack ? fault.TierNumber is { } tier ? $"{site[rack].Name}/tier {tier}" : site[rack].Name
        : "";
}
