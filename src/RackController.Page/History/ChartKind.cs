using System.Collections.Immutable;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>A chart of values of one unit.</summary>
/// <param name="Key">As an address says it.</param>
/// <param name="Title">As a person says it.</param>
/// <param name="Unit">The unit of its values; empty for the chart of what was on.</param>
public sealed record ChartKind(string Key, string Title, string Unit)
{
    /// <summary>What was on and what happened.</summary>
    public static readonly ChartKind Loads = new("loads", "Loads, floods and alarms", "");

    /// <summary>How long loads were on each day.</summary>
    public static readonly ChartKind Hours = new("hours", "Hours on, each day", "h");

    /// <summary>What the loads of a rack took each day.</summary>
    public static readonly ChartKind Energy = new("energy", "Energy by nameplates, each day", "kWh");

    /// <summary>What lights gave their tiers each day.</summary>
    public static readonly ChartKind DailyLight = new("daily-light", "Light by PPFD, each day", "mol/m²");

    /// <summary>How much water floods took each day.</summary>
    public static readonly ChartKind Water = new("water", "Water of floods, each day", "L");

    /// <summary>How many floods there were each day.</summary>
    public static readonly ChartKind Floods = new("floods", "Floods, each day", "floods");

    /// <summary>All of them that can be asked for, in the order in which they are shown.</summary>
    public static readonly ImmutableArray<ChartKind> All =
    [
        Loads, new("levels", "Levels", "mm"), new("currents", "Currents", "A"), new("flow", "Flow", "L/min"),
        new("temperatures", "Temperatures", "\u00b0C"), new("humidity", "Humidity", "%"), new("light", "Light", "lx"),
    ];

    /// <summary>The measuring sensors of a rack, and of the circuits that it draws from, that belong into it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">The rack.</param>
    public IEnumerable<Sensor> SensorsOf(Site site, Rack rack)
    {
        var circuits = site.Loads.Where(load => load.Rack == rack.Id).Select(load => load.Circuit).ToHashSet();
        return site.Sensors.Where(sensor => !sensor.IsContact && ReadingWords.Unit(sensor.Kind) == Unit
            && (sensor.Rack == rack.Id || (sensor.Circuit is { } circuit && circuits.Contains(circuit))));
    }
}
