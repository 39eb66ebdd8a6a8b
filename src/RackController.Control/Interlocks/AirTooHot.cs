using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Puts out a tier's lights when its air is too hot, and lights them again when it has cooled by a margin. Hazard: heat that
/// builds up where a fan has failed. While the temperature is unknown its last answer stands: dark without end kills a crop
/// as surely, and the unknown reading has its own alarm.
/// </summary>
internal sealed class AirTooHot(
    CauseAndEffectRow row, Rack rack, string place, ImmutableArray<LoadId> lights, Sensor sensor)
    : Interlock(row, place, lights)
{
    private bool isHot;
    private double lastC;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (facts.IsKnown(sensor.Id))
        {
            lastC = facts.Value(sensor.Id);
            isHot = isHot ? lastC > rack.Limits.AirHotC - rack.Limits.AirHotReturnK : lastC > rack.Limits.AirHotC;
        }

        return isHot;
    }

    public override string Words(ClockFace clock) =>
        $"the air is at {lastC:0.0} °C and lights are out above {rack.Limits.AirHotC:0.#} °C";
}
