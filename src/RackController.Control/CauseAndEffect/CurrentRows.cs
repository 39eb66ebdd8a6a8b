using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>The rows that know by current what relays and loads really do.</summary>
internal static class CurrentRows
{
    public static CauseAndEffectRow RelayWelded { get; } = new(
        "relay-welded", "a load's relay is told off and current still flows", "pump current or circuit current",
        RowEffect.CutCircuit,
        "a pump: the circuit's contactor opens, where there is one, and where a fan or aerator draws as much as the pump not "
        + "before those have shown that it is not them; any other load: a person is told",
        "operator reset, after the relay was changed",
        new AlarmText(
            AlarmPriority.Critical, "what hangs on the relay stays on, whatever the controller says",
            "pull its plug; look for what else is plugged in that the rack file does not name, and, if it is a fan or aerator, that no "
            + "pump which draws as much runs in its place; change the relay; reset", "at once"))
    {
        Scope = RowScope.Circuit,
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.MeasuredLoads.Select(load => new RelayWelded(row, load, site.Site[load.Circuit])),
    };

    public static CauseAndEffectRow LightStaysOn { get; } = new(
        "light-stays-on", "a light is told off in air that is too hot, and its current still flows",
        "air temperature, circuit current and an upstream contactor", RowEffect.CutCircuit,
        "the circuit's contactor opens, which takes air and water away too",
        "operator reset; by itself once the air has cooled, where the light only seems to draw current, up to the third time in 24 h",
        new AlarmText(
            AlarmPriority.Critical, "roots go without air and water for as long as the contactor is open",
            "pull the plug of the light that stays on; reset, if it has latched; change its relay before you plug it in again",
            "at once"))
    {
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) =>
            from light in site.MeasuredLoads
            where light.Kind == LoadKind.Light && site.Site[light.Circuit].HasUpstreamContactor
            let rack = site.Site[light.Rack]
            let air = site.SensorsOf(rack, SensorKind.AirTemperature)
                .Where(sensor => sensor.TierNumber is null || sensor.TierNumber == light.TierNumber).ToImmutableArray()
            where !air.IsEmpty
            select new LightStaysOn(row, site, light, air),
    };

    public static CauseAndEffectRow CircuitOverLimit { get; } = new(
        "circuit-over-limit", "a circuit is measured to carry more than it may for hours", "circuit current", RowEffect.Shed,
        "loads of low priority off, lights first, until the rest fits",
        "by itself once what was shed fits again with a margin; several times in 24 h latch it until somebody resets",
        new AlarmText(
            AlarmPriority.High, "plug and cable grow warm, and the breaker may take light, air and water away",
            "look for what is plugged in besides, a low supply or a motor that is stuck; reset if it has latched", "within an hour"))
    {
        Scope = RowScope.Circuit,
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.Metered.Select(at => new CircuitOverLimit(row, site, at.Circuit, at.Sensor)),
    };

    public static CauseAndEffectRow AirDead { get; } = new(
        "dead-air", "an aerator or fan is told on and draws no current", "circuit current", RowEffect.Tell, "a person is told",
        "by itself once it draws current, or once somebody has acknowledged it and it has been off for 20 min, whatever kept it off; told "
        + "anew when it is switched on and still draws none",
        new AlarmText(
            AlarmPriority.High, "roots suffocate and seedlings mould within hours", "look at the aerator or fan, its plug and its relay",
            "within an hour"))
    {
        Scope = RowScope.Circuit,
        Returns = WaysBack.ByItself | WaysBack.Acknowledgement,
        Instances = (row, site) => site.MeasuredLoads.Where(IsAir).Select(load => new LoadDead(row, load)),
    };

    public static CauseAndEffectRow LoadDead { get; } = new(
        "dead-load", "a pump, valve or light is told on and draws no current", "pump current or circuit current", RowEffect.Tell,
        "a person is told", "by itself once it draws current",
        new AlarmText(AlarmPriority.Medium, "its tiers stay dry or dark", "look at the load, its plug and its relay", "within a day"))
    {
        Scope = RowScope.Circuit,
        Instances = (row, site) => site.MeasuredLoads.Where(load => !IsAir(load)).Select(load => new LoadDead(row, load)),
    };

    public static CauseAndEffectRow LoadCheck { get; } = new(
        "load-check", "an aerator or fan was on for long, or the current of one of them or of a light seems to be gone", "circuit current",
        RowEffect.ForbidOn,
        "it is off for a moment, to see its current fall and rise; not while hands are in a rack on the circuit", "by itself",
        Alarm: null)
    {
        Scope = RowScope.Circuit,
        IsOrdinary = true,
        Instances = (row, site) =>
            from at in site.Metered
            from checks in site.MeasuredLoads.Where(load => load.Circuit == at.Circuit.Id && IsChecked(load)).Index()
            select new LoadCheck(row, site, checks.Item, at.Sensor.Id, checks.Index),
    };

    public static CauseAndEffectRow WeldCheck { get; } = new(
        "weld-check", "a load that is told off seems to draw current, or nobody can tell whether a pump does", "circuit current",
        RowEffect.ForbidOn,
        "everything on its circuit is off for a moment, once no pump runs there and, but for a pump's sake, no hands are in a rack: what "
        + "still flows then is no guess",
        "by itself; for what it has found not again before a day, and ever more seldom where it finds nothing, but for a pump that no "
        + "sensor in its own wire tells of",
        Alarm: null)
    {
        Scope = RowScope.Circuit,
        IsOrdinary = true,
        Instances = (row, site) =>
            from at in site.Metered
            from load in site.MeasuredLoads.Where(load => load.Circuit == at.Circuit.Id)
            select new WeldCheck(row, site, load, at.Sensor.Id),
    };

    public static CauseAndEffectRow RelayWorn { get; } = new(
        "relay-worn", "a relay has switched as often as it is made for", "nothing (count)", RowEffect.Tell, "a person is told",
        "operator reset, after the relay was changed",
        new AlarmText(
            AlarmPriority.Low, "its contacts may weld, or no longer close", "change the relay at the next occasion; reset",
            "within a month"))
    {
        Returns = WaysBack.Reset,
        Instances = (row, site) => site.Site.Loads.Select(load => new RelayWorn(row, site.Site[load.Rack], load)),
    };

    // A light out for seconds harms nothing; a pump or a valve would take its water away.
    private static bool IsChecked(Load load) => IsAir(load) || load.Kind == LoadKind.Light;

    private static bool IsAir(Load load) => load.Kind is LoadKind.Aerator or LoadKind.Fan;
}
