using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a reservoir's water is too warm to hold oxygen, or too cold for roots. It switches nothing.</summary>
internal sealed class WaterTemperatureOutOfRange(CauseAndEffectRow row, Rack rack, Sensor sensor)
    : Interlock(row, Place.Of(rack), [])
{
    private const double ReturnK = 0.5;
    private bool isOut;

    /// <summary>What it read at this scan, for words; null while it is unknown, because an older value would be that of whichever
    /// scan came last.</summary>
    private double? nowC;

    public override ImmutableArray<SensorLevel> Levels =>
    [
        new(sensor.Id, rack.Limits.WaterWarmC), new(sensor.Id, rack.Limits.WaterWarmC - ReturnK),
        new(sensor.Id, rack.Limits.WaterColdC), new(sensor.Id, rack.Limits.WaterColdC + ReturnK),
    ];

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (!facts.IsKnown(sensor.Id))
        {
            nowC = null;
            return isOut;
        }

        var wasOut = isOut;
        var margin = wasOut ? ReturnK : 0;
        isOut = facts.IsAbove(sensor.Id, rack.Limits.WaterWarmC - margin)
            || facts.IsBelow(sensor.Id, rack.Limits.WaterColdC + margin);
        nowC = isOut || wasOut ? facts.Value(sensor.Id) : null;
        if (isOut != wasOut)
        {
            // What it says becomes another with the scan after, whenever that is.
            agenda.AddForAnyScan(facts.Now.Monotonic);
        }

        return isOut;
    }

    public override string Words(ClockFace clock) =>
        $"the water {(nowC is { } waterC ? $"is at {waterC:0.0} °C, outside" : "when last measured was outside")} "
        + $"{rack.Limits.WaterColdC:0.#} to {rack.Limits.WaterWarmC:0.#} °C";
}
