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
        "low-float", "the reservoir's low float is dry", "reservoir low float", RowEffect.ForbidOn, "pump off within 1 s",
        "by itself once it has read wet for its time; several in one flood latch the pump until somebody resets",
        new AlarmText(
            AlarmPriority.High, "floods are held; crops dry out",
            "top up the reservoir; look for a leak if it emptied early; reset if it has latched", "within four hours"))
    {
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.Site.Racks
            .Select(rack => (rack, floats: site.SensorsOf(rack, SensorKind.ReservoirLowFloat)))
            .Where(at => at.floats.Length > 0)
            .Select(at => new LowFloat(row, at.rack, at.floats, site.Start)),
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
