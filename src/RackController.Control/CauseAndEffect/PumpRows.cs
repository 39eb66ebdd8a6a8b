using RackController.Model;

namespace RackController.Control;

/// <summary>The rows that protect the pump and the floor.</summary>
internal static class PumpRows
{
    public static CauseAndEffectRow PumpMaximumRun { get; } = new(
        "pump-maximum-run", "the pump has run its maximum", "nothing", RowEffect.ForbidOn, "pump off",
        "after its rest time; several in 24 h latch the pump until somebody resets",
        new AlarmText(
            AlarmPriority.Medium, "the flood was cut short; trays may not have filled",
            "compare fill and soak times with the maximum run; look for a tray that never fills; reset if it has latched",
            "within a day"))
    {
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.Site.Racks.Select(rack => new PumpMaximumRun(row, rack, site.Start)),
    };

    public static CauseAndEffectRow PumpRest { get; } = new(
        "pump-rest", "the pump's rest time is not over and trays still drain", "nothing", RowEffect.ForbidOn,
        "pump may not start", "by itself", Alarm: null)
    {
        IsOrdinary = true,
        Instances = (row, site) => site.Site.Racks.Select(rack => new PumpRest(row, rack, site.Start)),
    };

    public static CauseAndEffectRow PumpDailyBudget { get; } = new(
        "pump-daily-budget", "all pump runs of the day have used their budget", "nothing", RowEffect.ForbidOn,
        "pump may not start", "24 h after the day's first run, or when acknowledged",
        new AlarmText(
            AlarmPriority.High, "no more floods today; crops dry out",
            "find out why the pump ran so long; acknowledge to grant one more budget", "within four hours"))
    {
        Returns = WaysBack.ByItself | WaysBack.Acknowledgement,
        Instances = (row, site) => site.Site.Racks.Select(rack => new PumpDailyBudget(row, rack, site.Start)),
    };

    public static CauseAndEffectRow LowFloat { get; } = new(
        "low-float", "the reservoir's low float is dry, or its level is down to the pump's intake",
        "reservoir low float or reservoir level", RowEffect.ForbidOn, "pump off within 1 s",
        "by itself once it has read wet for its time; several in one flood latch the pump until somebody resets",
        new AlarmText(
            AlarmPriority.High, "floods are held; crops dry out",
            "top up the reservoir; look for a leak if it emptied early; reset if it has latched", "within four hours"))
    {
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.Site.Racks
            .Select(rack => (
                rack, floats: site.SensorsOf(rack, SensorKind.ReservoirLowFloat),
                levels: site.SensorsOf(rack, SensorKind.ReservoirLevel)))
            .Where(at => at.floats.Length + at.levels.Length > 0)
            .Select(at => new LowFloat(row, site, at.rack, at.floats, at.levels)),
    };

    public static CauseAndEffectRow HighWater { get; } = new(
        "high-water", "a tray's high float, a leak rope or the drip tray's float is wet",
        "tray high float, leak rope or drip tray float", RowEffect.ForbidOn,
        "pump off, tier valves closed", "operator reset only",
        new AlarmText(
            AlarmPriority.Critical, "water runs onto the floor",
            "switch the rack off at the plug if water is near electrics; find the blocked drain or leak; dry the sensor; reset",
            "at once"))
    {
        Returns = WaysBack.Reset,
        Instances = (row, site) => site.Site.Racks
            .Select(rack => (rack, wet: site.SensorsOf(rack, SensorKind.TrayHighFloat, SensorKind.LeakRope, SensorKind.DripTrayFloat)))
            .Where(at => at.wet.Length > 0)
            .Select(at => new HighWater(
                row, at.rack, site.LoadsOf(at.rack, LoadKind.Pump, LoadKind.Valve), at.wet)),
    };

    public static CauseAndEffectRow NoFill { get; } = new(
        "no-fill", "no water is seen to come: no flow, no fall in the reservoir, no rise in a tray, or far too much current",
        "any one of pump flow, reservoir level, tray level, pump current and, where fills end by it, tray full float", RowEffect.ForbidOn,
        "pump off: it is dry, clogged, air-bound or held fast",
        "after its rest time, for one more try; several in a row latch the pump until somebody resets",
        new AlarmText(
            AlarmPriority.High, "the pump burns if it runs on; crops dry out",
            "look at the water, the pump's screen and its hose; see whether a wired float has opened the pump's wire; reset",
            "within four hours"))
    {
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.Site.Racks
            .Where(rack => site.SensorsOf(
                rack, SensorKind.PumpFlow, SensorKind.ReservoirLevel, SensorKind.TrayLevel, SensorKind.PumpCurrent).Length > 0
                || (rack.Schedule.Floods.Fill is FillUntilFull && site.SensorsOf(rack, SensorKind.TrayFullFloat).Length > 0))
            .Select(rack => new NoFill(row, rack, site.Start)),
    };

    public static CauseAndEffectRow NotDrained { get; } = new(
        "not-drained", "a tray still holds water when the next flood is due", "tray full float or tray level", RowEffect.ForbidOn,
        "the flood is held", "by itself when it has drained",
        new AlarmText(
            AlarmPriority.High, "roots drown in that tray; crops of the other trays dry out",
            "clear the weep of that tray, or take its tier out of use; look whether its float is stuck", "within four hours"))
    {
        Instances = (row, site) => site.Site.Racks
            .Select(rack => (rack, senses: site.SensorsOf(rack, SensorKind.TrayFullFloat, SensorKind.TrayLevel)))
            .Where(at => at.senses.Length > 0)
            .Select(at => new NotDrained(row, site, at.rack, at.senses)),
    };

    public static CauseAndEffectRow FloodHeld { get; } = new(
        "flood-held", "a flood has been due for twice the pump's rest and could not begin", "nothing", RowEffect.Tell,
        "a person is told", "by itself once the flood begins",
        new AlarmText(
            AlarmPriority.High, "crops dry out", "see what holds the pump; water by hand meanwhile", "within four hours"))
    {
        Instances = (row, site) => site.Site.Racks.Select(rack => new FloodHeld(row, rack)),
    };

    public static CauseAndEffectRow FillSlow { get; } = new(
        "fill-slow", "a fill by level took its time limit", "tray full float or tray level", RowEffect.Tell,
        "a person is told", "by itself with the next good fill",
        new AlarmText(
            AlarmPriority.Medium, "a tray may stay dry",
            "clean the pump's screen; look at pipe and valve of the tray that is last to fill", "within a day"))
    {
        Instances = (row, site) => site.Site.Racks
            .Where(rack => rack.Schedule.Floods.Fill is FillUntilFull)
            .Select(rack => new FillSlow(row, rack)),
    };
}
