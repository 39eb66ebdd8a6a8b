using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Puts out a tier's lights when its air is too hot, and lights them again when it has cooled by a margin. Hazard: heat that
/// builds up where a fan has failed. While the temperature is unknown its last answer stands, across a restart too: dark without
/// end kills a crop as surely, and the unknown reading has its own alarm.
/// </summary>
internal sealed class AirTooHot(
    CauseAndEffectRow row, InterlockSite site, Rack rack, Place place, ImmutableArray<LoadId> lights, Sensor sensor)
    : Interlock(row, place, lights)
{
    private readonly Limit hot = site.Limit(sensor, rack.Limits.AirHotC);
    private readonly Limit cooled = site.Limit(sensor, rack.Limits.AirHotC - rack.Limits.AirHotReturnK);
    private bool isHot;

    /// <summary>What it read at this scan, for words; null while it is unknown, because an older value would be that of whichever
    /// scan came last.</summary>
    private double? nowC;

    public override string Settings =>
        $"out above {rack.Limits.AirHotC:0.#} °C, back below {rack.Limits.AirHotC - rack.Limits.AirHotReturnK:0.#} °C";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (!facts.IsKnown(sensor.Id))
        {
            nowC = null;
            return isHot;
        }

        var wasHot = isHot;
        isHot = facts.IsAbove(wasHot ? cooled : hot);
        nowC = isHot || wasHot ? facts.ValueToTell(sensor.Id) : null;
        if (isHot != wasHot)
        {
            // What it says becomes another with the scan after, whenever that is.
            agenda.AddForAnyScan(facts.Now.Monotonic);
            Changed();
        }

        return isHot;
    }

    public override string Words(ClockFace clock) =>
        $"the air {(nowC is { } airC ? $"is at {airC:0.0} °C" : "was too hot when last measured")} "
        + $"and lights are out above {rack.Limits.AirHotC:0.#} °C";

    public override void Save(MemoryWriter memory)
    {
        base.Save(memory);
        memory.Put($"{Key}/hot", isHot ? 1 : 0);
    }

    public override void Restore(MemoryReader memory, Moment start)
    {
        base.Restore(memory, start);
        isHot = memory.Number($"{Key}/hot") == 1;
    }
}
