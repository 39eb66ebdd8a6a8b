using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Cuts pump and valves when water is where it must not be: above a standpipe, in the drip tray or on the floor. Hazard: a
/// flooded room. Only a person who has looked may let it go. A float or rope whose word is unknown forbids the pump without latching.
/// </summary>
internal sealed class HighWater(
    CauseAndEffectRow row, Rack rack, ImmutableArray<LoadId> loads, ImmutableArray<Sensor> sensors)
    : Interlock(row, Place.Of(rack), loads)
{
    private string? wet;
    private string? unknown;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        unknown = null;
        var anyWet = false;
        foreach (var sensor in sensors)
        {
            if (facts.IsClosed(sensor.Id))
            {
                wet = sensor.Name;
                anyWet = true;
                Latch();
            }
            else if (!facts.IsKnown(sensor.Id))
            {
                unknown ??= sensor.Name;
            }
        }

        // Doubt about a sensor is told by the sensor's own alarm.
        IsInDoubt = !anyWet;
        return anyWet || unknown is not null;
    }

    public override bool ActsOn(SensorId contact) => sensors.Any(sensor => sensor.Id == contact);

    public override string Words(ClockFace clock) => IsLatched
        ? $"{wet ?? "a float or leak rope"} was wet; somebody must look and reset"
        : $"nobody knows whether {unknown} is wet";
}
