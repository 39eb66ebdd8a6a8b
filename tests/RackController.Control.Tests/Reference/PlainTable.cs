using NodaTime;
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
    /// <summary>Every row of the table wherever it stands on a site.</summary>
    public static List<PlainRow> Of(Site site) =>
    [
        new("scan-fault", "controller", _ => true, (story, _) => SiteRowsPlain.ScanFault(story)),
        new("clock-stepped", "controller", None, SiteRowsPlain.ClockStepped),
        new("clock-untrusted", "controller", None, (story, _) => SiteRowsPlain.ClockUntrusted(story)),
        .. site.Racks.SelectMany(rack => OfRack(site, rack)),
        .. site.Racks.SelectMany(rack => OfLights(site, rack)),
        .. site.Racks.SelectMany(rack => OfFloats(site, rack)),
        .. site.Circuits.SelectMany(circuit => OfCircuit(site, circuit)),
        .. site.Loads.Where(load => PlainCurrents.IsMeasured(site, load)).SelectMany(OfMeasured),
        .. site.Loads.Where(load => CurrentRowsPlain.CanBeCutInTheHeat(site, load)).Select(light => new PlainRow(
            "light-stays-on", light.Name, None, (story, key) => CurrentRowsPlain.LightStaysOn(story, light, key))),
        .. site.Loads.Select(load => new PlainRow(
            "relay-worn", load.Name, None, (story, key) => CurrentRowsPlain.RelayWorn(story, load, key))),
        .. PlainTests.Places(site).SelectMany(place => OfTests(place.Name, place.Items)),
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

        if (Has(SensorKind.PumpFlow, SensorKind.ReservoirLevel, SensorKind.TrayLevel, SensorKind.PumpCurrent)
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

    private static IEnumerable<PlainRow> OfLights(Site site, Rack rack)
    {
        foreach (var sensor in site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.LightLevel))
        {
            var tier = rack.Tier(sensor.TierNumber!.Value);
            var place = $"{rack.Name}/tier {tier.Number}";
            yield return new("light-missing", place, None, (story, _) => LightRowsPlain.LightMissing(story, rack, tier, sensor));
            yield return new("light-unasked", place, None, (story, _) => LightRowsPlain.LightUnasked(story, rack, tier, sensor));
        }
    }

    private static IEnumerable<PlainRow> OfCircuit(Site site, Circuit circuit)
    {
        yield return new(
            "supply-lost", circuit.Name, load => load.Circuit == circuit.Id,
            (story, key) => SupplyPlain.Lost(story, circuit, key));
        yield return new("circuit-shed", circuit.Name, None, (story, _) => SiteRowsPlain.CircuitShed(story, circuit));
        if (PlainCurrents.MeterOf(site, circuit.Id) is not { } meter)
        {
            yield break;
        }

        yield return new(
            "circuit-over-limit", circuit.Name, None,
            (story, key) => CurrentRowsPlain.CircuitOverLimit(story, circuit, meter, key));
        foreach (var each in site.Loads.Where(load => load.Circuit == circuit.Id && PlainCurrents.IsMeasured(site, load)))
        {
            yield return new(
                "weld-check", each.Name, load => load.Circuit == circuit.Id, (story, _) => CurrentRowsPlain.WeldCheck(story, each, meter));
        }

        var looked = site.Loads.Where(load => load.Circuit == circuit.Id && (IsAir(load) || load.Kind == LoadKind.Light)
            && PlainCurrents.IsMeasured(site, load));
        foreach (var (turn, each) in looked.Index())
        {
            yield return new(
                "load-check", each.Name, load => load == each, (story, _) => CurrentRowsPlain.LoadCheck(story, each, meter, turn));
        }
    }

    private static IEnumerable<PlainRow> OfMeasured(Load load)
    {
        yield return new("relay-welded", load.Name, None, (story, key) => CurrentRowsPlain.RelayWelded(story, load, key));
        yield return new(
            IsAir(load) ? "dead-air" : "dead-load", load.Name, None, (story, key) => CurrentRowsPlain.LoadDead(story, load, key));
    }

    private static IEnumerable<PlainRow> OfFloats(Site site, Rack rack)
    {
        bool Pump(Load load) => load.Id == rack.Pump.Load;
        foreach (var (vessel, floats, level) in ProofRowsPlain.Vessels(site, rack))
        {
            var pairs = ProofRowsPlain.Pairs(floats, level);
            if (pairs.Count > 0)
            {
                yield return new(
                    "floats-contradict", vessel, Pump, (story, key) => ProofRowsPlain.FloatsContradict(story, rack, pairs, key));
            }
        }

        foreach (var full in site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.TrayFullFloat
            && rack.Schedule.Floods.Fill is FillUntilFull))
        {
            yield return new("float-still", full.Name, None, (story, key) => ProofRowsPlain.FloatStill(story, rack, full, key));
            yield return new("float-stuck", full.Name, Pump, (story, key) => ProofRowsPlain.FloatStuck(story, rack, full, key));
        }
    }

    private static IEnumerable<PlainRow> OfTests(string place, List<(string Item, Duration Interval)> items)
    {
        yield return new(
            "proof-test-failed", place, None, (story, _) => ProofRowsPlain.ProofTestFailed(story, items.Select(each => each.Item)));
        yield return new("proof-test-overdue", place, None, (story, _) => ProofRowsPlain.ProofTestOverdue(story, items));
    }

    private static bool IsAir(Load load) => load.Kind is LoadKind.Aerator or LoadKind.Fan;

    private static bool None(Load load) => false;
}
