using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a reservoir's water is too warm to hold oxygen, or too cold for roots. It switches nothing.</summary>
internal sealed class WaterTemperatureOutOfRange(CauseAndEffectRow row, InterlockSite site, Rack rack, Sensor sensor)
    : Interlock(row, Place.Of(rack), [])
{
    private const double ReturnK = 0.5;
    private readonly Limit warm = site.Limit(sensor, rack.Limits.WaterWarmC);
    private readonly Limit cooled = site.Limit(sensor, rack.Limits.WaterWarmC - ReturnK);
    private readonly Limit cold = site.Limit(sensor, rack.Limits.WaterColdC);
    private readonly Limit warmed = site.Limit(sensor, rack.Limits.WaterColdC + ReturnK);
    private readonly ShownUnit unit = site.Site.Units.Of("°C");
    private bool isOut;

    /// <summary>What it read at this scan, for words; null while it is unknown, because an older value would be that of whichever
    /// scan came last.</summary>
    private double? nowC;

    public override string Settings => $"{unit.Limit(rack.Limits.WaterColdC)} to {unit.Limit(rack.Limits.WaterWarmC)}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (!facts.IsKnown(sensor.Id))
        {
            nowC = null;
            return isOut;
        }

        var wasOut = isOut;
        isOut = facts.IsAbove(wasOut ? cooled : warm) || facts.IsBelow(wasOut ? warmed : cold);
        nowC = isOut || wasOut ? facts.ValueToTell(sensor.Id) : null;
        if (isOut != wasOut)
        {
            // What it says becomes another with the scan after, whenever that is.
            agenda.AddForAnyScan(facts.Now.Monotonic);
        }

        return isOut;
    }

    public override string Words(ClockFace clock) =>
        $"the water {(nowC is { } waterC ? $"is at {unit.Words(waterC, 1)}, outside" : "when last measured was outside")} "
        + Settings;
}
