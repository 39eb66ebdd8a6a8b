using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Tells that a reservoir's water is too warm to hold oxygen, or too cold for roots. It switches nothing.</summary>
internal sealed class WaterTemperatureOutOfRange(CauseAndEffectRow row, Rack rack, Sensor sensor)
    : Interlock(row, rack.Name, [])
{
    private const double ReturnK = 0.5;
    private double lastC;
    private bool isOut;

    public override ImmutableArray<SensorLevel> Levels =>
    [
        new(sensor.Id, rack.Limits.WaterWarmC), new(sensor.Id, rack.Limits.WaterWarmC - ReturnK),
        new(sensor.Id, rack.Limits.WaterColdC), new(sensor.Id, rack.Limits.WaterColdC + ReturnK),
    ];

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (facts.IsKnown(sensor.Id))
        {
            lastC = facts.Value(sensor.Id);
            var margin = isOut ? ReturnK : 0;
            isOut = lastC > rack.Limits.WaterWarmC - margin || lastC < rack.Limits.WaterColdC + margin;
        }

        return isOut;
    }

    public override string Words(ClockFace clock) =>
        $"the water is at {lastC:0.0} °C, outside {rack.Limits.WaterColdC:0.#} to {rack.Limits.WaterWarmC:0.#} °C";
}
