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
    private readonly Limit hot = site.Limit(sensor, rack.Limits.AirHotC);
    private readonly Limit cooled = site.Limit(sensor, rack.Limits.AirHotC - rack.Limits.AirHotReturnK);
    private readonly bool[] cuts = new bool[site.Site.Circuits.Length];
    private bool isHot;
    private MonotonicTime? unknownSince;

    /// <summary>What it read at this scan, for words; null while it is unknown, because an older value would be that of whichever
    /// scan came last.</summary>
    private double? nowC;

    public override string Settings =>
        $"out above {rack.Limits.AirHotC:0.#} °C, back below {rack.Limits.AirHotC - rack.Limits.AirHotReturnK:0.#} °C; "
        + $"out when unknown for {rack.Limits.AirUnknownGrace.InWords()}";

    public override ImmutableArray<CircuitId> MayCut { get; } =
    [
        .. lights.Select(light => site.Site[light].Circuit).Distinct().Where(circuit => site.Site[circuit].HasUpstreamContactor),
    ];

    public override bool Cuts(CircuitId circuit) => cuts[circuit.Index];

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        IsInDoubt = false;
        if (!facts.IsKnown(sensor.Id))
        {
            nowC = null;
            CutWhatStaysOn(facts);
            IsInDoubt = !isHot;
            return isHot || IsUnknownForLong(facts, agenda);
        }

        unknownSince = null;

        var wasHot = isHot;
        isHot = facts.IsAbove(wasHot ? cooled : hot);
        nowC = isHot || wasHot ? facts.ValueToTell(sensor.Id) : null;
        if (isHot != wasHot)
        {
            // What it says becomes another with the scan after, whenever that is.
            agenda.AddForAnyScan(facts.Now.Monotonic);
            Changed();
        }

        CutWhatStaysOn(facts);
        return isHot;
    }

    // Nothing on the circuit is as urgent as a lamp that heats what is too hot already.
    private void CutWhatStaysOn(Facts facts)
    {
        foreach (var light in Loads)
        {
            var staysOn = !facts.WasOn(light) && facts.FlowOf(light) is Flow.Flows or Flow.SeemsToFlow;
            ref var isCut = ref cuts[site.Site[light].Circuit.Index];
            isCut = isHot && (isCut || staysOn);
        }
    }

    public override string Words(ClockFace clock) =>
        IsInDoubt
            ? $"nobody has known the temperature of the air for {rack.Limits.AirUnknownGrace.InWords()}"
            : $"the air {(nowC is { } airC ? $"is at {airC:0.0} °C" : "was too hot when last measured")} "
                + $"and lights are out above {rack.Limits.AirHotC:0.#} °C"
                + (cuts.Contains(true) ? ", but one seems to stay on" : "");

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
