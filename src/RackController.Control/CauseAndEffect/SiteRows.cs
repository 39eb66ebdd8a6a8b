using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>The rows that protect circuits, crops and people, and those that doubt the controller's own senses.</summary>
internal static class SiteRows
{
    public static CauseAndEffectRow ScanFault { get; } = new(
        "scan-fault", "a scan came late, or inputs or outputs fail", "nothing", RowEffect.SafeState,
        "every load in its safe state; the watchdog is not fed", "by itself once scans have been good for a while, or by restart",
        new AlarmText(
            AlarmPriority.High, "nothing is watered or lit",
            "see the log for what failed; check the board's wiring, and what else keeps it busy", "within an hour"))
    {
        Scope = RowScope.Controller,
        Instances = (row, site) => [new ScanFault(row, site.Site, [.. site.Site.Loads.Select(load => load.Id)])],
    };

    public static CauseAndEffectRow SupplyLost { get; } = new(
        "supply-lost", "a circuit lost its supply, or the controller restarted", "supply sense, circuit current or a restart",
        RowEffect.ForbidOn,
        "everything on the circuit off for the quiet period, then one load at a time by priority; after a restart that failing or late "
        + "scans led to, aerator and fans stay on",
        "by itself; several losses in 24 h latch the circuit until somebody resets; while the sense is unknown its last answer stands",
        new AlarmText(
            AlarmPriority.High, "no light, air or water on this circuit",
            "look at breaker and ground-fault protection; find the cause before switching on again; reset if it has latched",
            "within an hour"))
    {
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Scope = RowScope.Circuit,
        Instances = (row, site) => site.Site.Circuits.Select(circuit => new SupplyLost(row, site, circuit)),
    };

    public static CauseAndEffectRow ServiceHold { get; } = new(
        "service-hold", "hands are in the rack, or were until somebody resumed, reset or ended a hold just now", "an operator",
        RowEffect.ForbidOn, "pump may not start, valves closed", "by itself after its time limit, with a warning first", Alarm: null)
    {
        Instances = (row, site) => site.Site.Racks.Select(rack => new ServiceHold(
            row, rack, site.LoadsOf(rack, LoadKind.Pump, LoadKind.Valve))),
    };

    public static CauseAndEffectRow ServiceHoldEnding { get; } = new(
        "service-hold-ending", "a service hold is about to end by itself", "an operator", RowEffect.Tell, "a person is told",
        "by itself",
        new AlarmText(
            AlarmPriority.High, "the pump may start while hands are in the rack",
            "take the hands out, or ask for a longer hold; only a pulled plug makes the rack dead", "within two minutes"))
    {
        Instances = (row, site) => site.Site.Racks.Select(rack => new ServiceHoldEnding(row, rack)),
    };

    public static CauseAndEffectRow AirTooHot { get; } = new(
        "air-too-hot", "the air at a tier or rack is too hot, or nobody knows its temperature", "air temperature",
        RowEffect.ForbidOn, "the lights there off",
        "by itself once it has cooled by a margin, or is known again",
        new AlarmText(
            AlarmPriority.High, "crops scorch; lamps overheat", "look at fans and ventilation", "within an hour"))
    {
        Instances = (row, site) =>
            from rack in site.Site.Racks
            from sensor in site.SensorsOf(rack, SensorKind.AirTemperature)
            let lights = site.LoadsOf(rack, LoadKind.Light)
                .Where(light => sensor.TierNumber is null || site.Site[light].TierNumber == sensor.TierNumber)
            let place = sensor.TierNumber is { } tier ? Place.Of(rack, tier) : Place.Of(rack)
            select new AirTooHot(row, site, rack, place, [.. lights], sensor, VouchersOf(site, rack, sensor)),
    };

    // For the air of a tier the sensor of its rack; for that of a rack a sensor of every tier with a light.
    private static ImmutableArray<ImmutableArray<Sensor>> VouchersOf(InterlockSite site, Rack rack, Sensor sensor)
    {
        var others = site.SensorsOf(rack, SensorKind.AirTemperature).Where(other => other.Id != sensor.Id).ToList();
        return sensor.TierNumber is { } tier
            ? [[.. others.Where(other => other.TierNumber is null || other.TierNumber == tier)]]
            : [.. rack.Tiers.Where(each => each.Light is not null)
                .Select(each => others.Where(other => other.TierNumber is null || other.TierNumber == each.Number).ToImmutableArray())];
    }

    public static CauseAndEffectRow WaterTemperature { get; } = new(
        "water-temperature", "the water is too warm or too cold", "water temperature", RowEffect.Tell, "a person is told",
        "by itself",
        new AlarmText(
            AlarmPriority.Medium, "warm water holds little oxygen and roots rot; cold water stalls growth",
            "cool or warm the room; check the aerator", "within a day"))
    {
        Instances = (row, site) =>
            from rack in site.Site.Racks
            from sensor in site.SensorsOf(rack, SensorKind.WaterTemperature)
            select new WaterTemperatureOutOfRange(row, site, rack, sensor),
    };

    public static CauseAndEffectRow CircuitShed { get; } = new(
        "circuit-shed", "what is wanted at once is more than a circuit may carry", "nothing (nameplates)", RowEffect.Tell,
        "loads of low priority wait, lights first", "by itself once the circuit has room",
        new AlarmText(
            AlarmPriority.Low, "some lights are on for less than their photoperiod",
            "move photoperiods apart, or move loads to another circuit", "within a week"))
    {
        Scope = RowScope.Circuit,
        Instances = (row, site) => site.Site.Circuits.Select(circuit => new CircuitShed(row, circuit)),
    };

    public static CauseAndEffectRow ReadingUnknown { get; } = new(
        "reading-unknown", "a reading is stale, out of range, corrupt or frozen", "any sensor", RowEffect.Tell,
        "the reading counts as unknown; whatever needs it errs on the safe side", "by itself after a run of good readings",
        new AlarmText(
            AlarmPriority.Medium, "whatever needs the sensor errs on the safe side, such as a pump that stays off or lights that stay out",
            "look at the sensor and its wire", "within a day"))
    {
        Scope = RowScope.Sensor,
        Instances = (row, site) => site.Site.Sensors.Select(sensor => new ReadingUnknown(row, sensor, site.Start)),
    };

    public static CauseAndEffectRow ClockUntrusted { get; } = new(
        "clock-untrusted", "the wall clock is not trusted", "clock state", RowEffect.Tell,
        "floods at the schedule's spacing from the last known flood; lights by the last known photoperiod",
        "by itself once the clock is trusted",
        new AlarmText(
            AlarmPriority.Low, "lights and floods drift from local time", "connect the board to network time, or fit a clock battery",
            "within a week"))
    {
        Scope = RowScope.Controller,
        Instances = (row, _) => [new ClockUntrusted(row)],
    };

    public static CauseAndEffectRow ClockStepped { get; } = new(
        "clock-stepped", "the wall clock was set by more than 5 min while it was trusted", "clock state", RowEffect.Tell,
        "floods and lights follow the clock; a person is told",
        "by itself once it is set back, or once somebody has acknowledged it",
        new AlarmText(
            AlarmPriority.Medium, "floods and lights come at the wrong hour if the clock is wrong",
            "look at date and time; if they are wrong, set them and see which network time the board follows", "within a day"))
    {
        Scope = RowScope.Controller,
        Returns = WaysBack.ByItself | WaysBack.Acknowledgement,
        Instances = (row, _) => [new ClockStepped(row)],
    };
}
