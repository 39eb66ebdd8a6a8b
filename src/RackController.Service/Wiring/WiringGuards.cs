using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>What keeps a load from being tried. No controller runs beside a walk, so these are all that there is beyond what is
/// wired.</summary>
/// <param name="site">The site.</param>
internal sealed class WiringGuards(Site site)
{
    /// <summary>Long enough to see and hear what goes on.</summary>
    public static readonly Duration Longest = Duration.FromSeconds(5);

    /// <summary>All that a pump may run in one walk: a few litres, which any tray takes.</summary>
    private static readonly Duration PumpInAll = Duration.FromSeconds(30);

    private readonly Dictionary<SensorId, bool> tried = [];
    private readonly Dictionary<RackId, Duration> pumped = [];

    /// <summary>A person said of a sensor whether it is right: of a contact, that it turned to both sides and is the one that is
    /// meant.</summary>
    public void Judge(SensorId sensor, bool isRight) => tried[sensor] = isRight;

    /// <summary>A pump ran for a while.</summary>
    public void Count(RackId rack, Duration ran) => pumped[rack] = pumped.GetValueOrDefault(rack) + ran;

    /// <summary>Why a load may not be powered now; null when it may.</summary>
    public string? Forbids(Load load, MonotonicTime now, Readings readings)
    {
        foreach (var sensor in site.Sensors.Where(sensor => IsWhereNoWaterBelongs(sensor.Kind)))
        {
            if (Says(sensor, 1, now, readings))
            {
                return $"{sensor.Name} is wet: find out why, dry it, and go on";
            }
        }

        return load.Kind == LoadKind.Pump ? ForbidsPump(load, now, readings) : null;
    }

    private string? ForbidsPump(Load pump, MonotonicTime now, Readings readings)
    {
        if (pumped.GetValueOrDefault(pump.Rack) + Longest > PumpInAll)
        {
            return "it has run as long as one walk allows: let the trays drain, and begin another walk";
        }

        foreach (var low in site.Sensors.Where(sensor => sensor.Kind == SensorKind.ReservoirLowFloat && sensor.Rack == pump.Rack))
        {
            if (!tried.TryGetValue(low.Id, out var isRight))
            {
                return $"{low.Name} was not tried: go back to it, so that the pump cannot run dry"
                    + (site.Io is SimulatedIo ? " (a simulated float cannot be lifted, so here the pump is not tried)" : "");
            }

            if (!isRight)
            {
                return $"{low.Name} was found wrong: mend it first, so that the pump cannot run dry";
            }

            if (!Says(low, 1, now, readings))
            {
                return $"{low.Name} tells of no water: fill the reservoir, so that the pump cannot run dry";
            }
        }

        return null;
    }

    private static bool IsWhereNoWaterBelongs(SensorKind kind) =>
        kind is SensorKind.LeakRope or SensorKind.DripTrayFloat or SensorKind.TrayHighFloat;

    private static bool Says(Sensor sensor, double value, MonotonicTime now, Readings readings)
    {
        var reading = readings[sensor.Id];
        return reading.Quality == ReadingQuality.Good && now <= reading.TakenAt + sensor.StaleAfter && reading.Value == value;
    }
}
