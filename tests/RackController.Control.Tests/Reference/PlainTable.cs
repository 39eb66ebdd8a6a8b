using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>One row at one place, as the plain table has it.</summary>
/// <param name="Row">The row.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Loads">The loads that it acts on.</param>
/// <param name="Ask">What it answers to the last page.</param>
internal sealed record PlainRow(string Row, string Place, Func<Load, bool> Loads, Func<Chronicle, string, Answer> Ask)
{
    public string Key => $"{Place}/{Row}";
}

/// <summary>
/// The cause-and-effect table a second time, written to be seen through: each row is a plain function from everything that happened to
/// what it answers now. It has no agenda, keeps nothing between scans and takes its time.
/// </summary>
internal static class PlainTable
{
    /// <summary>The rows that it does not have, because they go by proof tests, which it does not follow.</summary>
    public static readonly string[] Left =
    [
        "circuit-over-limit", "dead-air", "float-still", "float-stuck", "floats-contradict", "load-check", "proof-test-failed",
        "proof-test-overdue", "relay-worn",
    ];

    /// <summary>Every row of the table wherever it stands on a site.</summary>
    public static List<PlainRow> Of(Site site) =>
    [
        new("scan-fault", "controller", _ => true, (story, _) => SiteRowsPlain.ScanFault(story)),
        new("clock-untrusted", "controller", None, (story, _) => SiteRowsPlain.ClockUntrusted(story)),
        .. site.Racks.SelectMany(rack => OfRack(site, rack)),
        .. site.Circuits.SelectMany(OfCircuit),
        .. site.Sensors.Where(sensor => sensor.Kind == SensorKind.PumpCurrent)
            .SelectMany(sensor => OfMeasured(site[site[sensor.Rack!.Value].Pump.Load], sensor)),
        .. site.Sensors.Select(sensor => new PlainRow(
            "reading-unknown", sensor.Name, None, (story, _) => SiteRowsPlain.ReadingUnknown(story, sensor))),
    ];

    private static IEnumerable<PlainRow> OfRack(Site site, Rack rack)
    {
        bool Pump(Load load) => load.Id == rack.Pump.Load;
        bool Water(Load load) => load.Rack == rack.Id && load.Kind is LoadKind.Pump or LoadKind.Valve;
        bool Has(params SensorKind[] kinds) => site.Sensors.Any(sensor => sensor.Rack == rack.Id && kinds.Contains(sensor.Kind));

        yield return new("pump-rest", rack.Name, Pump, (story, _) => PumpRowsPlain.PumpRest(story, rack));
        yield return new("pump-maximum-run", rack.Name, Pump, (story, key) => PumpRowsPlain.PumpMaximumRun(story, rack, key));
        yield return new("pump-daily-budget", rack.Name, Pump, (story, key) => PumpRowsPlain.PumpDailyBudget(story, rack, key));
        yield return new("service-hold", rack.Name, Water, (story, _) => SiteRowsPlain.ServiceHold(story, rack));
        yield return new("service-hold-ending", rack.Name, None, (story, _) => SiteRowsPlain.ServiceHoldEnding(story, rack));
        yield return new("flood-held", rack.Name, None, (story, _) => PumpRowsPlain.FloodHeld(story, rack));
        if (Has(SensorKind.TrayFullFloat, SensorKind.TrayLevel))
        {
            yield return new("not-drained", rack.Name, Pump, (story, _) => PumpRowsPlain.NotDrained(story, rack));
        }

        if (Has(SensorKind.PumpFlow, SensorKind.ReservoirLevel, SensorKind.TrayLevel)
            || (rack.Schedule.Floods.Fill is FillUntilFull && Has(SensorKind.TrayFullFloat)))
        {
            yield return new("no-fill", rack.Name, Pump, (story, key) => PumpRowsPlain.NoFill(story, rack, key));
        }

        if (Has(SensorKind.ReservoirLowFloat, SensorKind.ReservoirLevel))
        {
            yield return new("low-float", rack.Name, Pump, (story, key) => PumpRowsPlain.LowFloat(story, rack, key));
        }

        if (Has(SensorKind.TrayHighFloat, SensorKind.LeakRope, SensorKind.DripTrayFloat))
        {
            yield return new("high-water", rack.Name, Water, (story, key) => PumpRowsPlain.HighWater(story, rack, key));
        }

        if (rack.Schedule.Floods.Fill is FillUntilFull)
        {
            yield return new("fill-slow", rack.Name, None, (story, _) => PumpRowsPlain.FillSlow(story, rack));
        }

        foreach (var sensor in site.Sensors.Where(sensor => sensor.Rack == rack.Id))
        {
            if (sensor.Kind == SensorKind.AirTemperature)
            {
                bool Lights(Load load) => load.Rack == rack.Id && load.Kind == LoadKind.Light
                    && (sensor.TierNumber is null || load.TierNumber == sensor.TierNumber);
                var place = sensor.TierNumber is { } tier ? $"{rack.Name}/tier {tier}" : rack.Name;
                yield return new("air-too-hot", place, Lights, (story, _) => SiteRowsPlain.AirTooHot(story, rack, sensor));
            }
            else if (sensor.Kind == SensorKind.WaterTemperature)
            {
                yield return new("water-temperature", rack.Name, None, (story, _) => SiteRowsPlain.WaterTemperature(story, rack, sensor));
            }
        }
    }

    private static IEnumerable<PlainRow> OfCircuit(Circuit circuit)
    {
        yield return new(
            "supply-lost", circuit.Name, load => load.Circuit == circuit.Id,
            (story, key) => SiteRowsPlain.SupplyLost(story, circuit, key));
        yield return new("circuit-shed", circuit.Name, None, (story, _) => SiteRowsPlain.CircuitShed(story, circuit));
    }

    private static IEnumerable<PlainRow> OfMeasured(Load load, Sensor sensor)
    {
        yield return new("relay-welded", load.Name, None, (story, key) => CurrentRowsPlain.RelayWelded(story, load, sensor, key));
        yield return new("dead-load", load.Name, None, (story, _) => CurrentRowsPlain.LoadDead(story, load, sensor));
    }

    private static bool None(Load load) => false;
}
