using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Puts out a tier's lights when its air is too hot, and lights them again when it has cooled by a margin. Hazard: heat that
/// builds up where a fan has failed. Where it is unknown for longer than a moment, and no other sensor vouches for the same air, the
/// lights are out too: a crop survives a few dark days, and what nobody measures may burn. The unknown reading has its own alarm.
/// What was too hot before a restart, or when it was last known, is so until it is known to have cooled.
/// </summary>
internal sealed class AirTooHot(
    CauseAndEffectRow row, InterlockSite site, Rack rack, Place place, ImmutableArray<LoadId> lights, Sensor sensor,
    ImmutableArray<ImmutableArray<Sensor>> vouchers)
    : Interlock(row, place, lights)
{
    private readonly HotAir air = new(site, sensor, rack.Limits);
    private readonly ShownUnit unit = site.Site.Units.Of("°C");
    private MonotonicTime? unknownSince;

    /// <summary>What it read at this scan, for words; null while it is unknown, because an older value would be that of whichever
    /// scan came last.</summary>
    private double? nowC;

    public override string Settings =>
        $"out above {unit.Limit(rack.Limits.AirHotC)}, back below {unit.Limit(rack.Limits.AirHotC - rack.Limits.AirHotReturnK)}; "
        + $"out when unknown for {rack.Limits.AirUnknownGrace.InWords()}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        IsInDoubt = false;
        if (!facts.IsKnown(sensor.Id))
        {
            nowC = null;
            IsInDoubt = !air.IsHot;
            return air.IsHot || IsUnknownForLong(facts, agenda);
        }

        unknownSince = null;

        var wasHot = air.IsHot;
        if (air.Look(facts))
        {
            // What it says becomes another with the scan after, whenever that is.
            agenda.AddForAnyScan(facts.Now.Monotonic);
            Changed();
        }

        nowC = air.IsHot || wasHot ? facts.ValueToTell(sensor.Id) : null;
        return air.IsHot;
    }

    public override string Words(ClockFace clock) =>
        IsInDoubt
            ? $"nobody has known the temperature of the air for {rack.Limits.AirUnknownGrace.InWords()}"
            : $"the air {(nowC is { } airC ? $"is at {unit.Words(airC, 1)}" : "was too hot when last measured")} "
                + $"and lights are out above {unit.Limit(rack.Limits.AirHotC)}";

    protected override void SaveOwn(MemoryWriter memory)
    {
        air.Save(memory, Key);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        air.Restore(memory, Key);
    }

    private bool IsUnknownForLong(Facts facts, Agenda agenda)
    {
        if (IsVouchedFor(facts))
        {
            unknownSince = null;
            return false;
        }

        unknownSince ??= facts.Now.Monotonic;
        var due = unknownSince.Value + rack.Limits.AirUnknownGrace;
        if (facts.Now.Monotonic >= due)
        {
            return true;
        }

        agenda.Add(due);
        return false;
    }

    // Of every set of sensors that look at a part of the same air, one must be known.
    private bool IsVouchedFor(Facts facts)
    {
        foreach (var set in vouchers)
        {
            var anyKnown = false;
            foreach (var other in set)
            {
                anyKnown |= facts.IsKnown(other.Id);
            }

            if (!anyKnown)
            {
                return false;
            }
        }

        return !vouchers.IsEmpty;
    }
}
