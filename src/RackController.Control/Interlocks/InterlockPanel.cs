using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Third step of a scan: every interlock looks at the same facts, and their objections come together per load.</summary>
internal sealed class InterlockPanel
{
    private readonly Site site;
    private readonly ImmutableArray<Interlock> interlocks;
    private readonly ImmutableArray<ImmutableArray<int>> byArea;
    private readonly ImmutableArray<ImmutableArray<Grip>> byRack;
    private readonly bool[] isTold;
    private readonly int[] moved;
    private int movedCount;

    public InterlockPanel(Site site, ImmutableArray<Interlock> interlocks, Areas areas)
    {
        this.site = site;
        this.interlocks = interlocks;
        Invariant.Holds(
            interlocks.All(interlock => interlock.Loads.All(areas.At(interlock.Place).Holds)),
            "an interlock acts on loads of the rack or circuit where it stands, since no others are decided with it");
        byArea = areas.Sort([.. Enumerable.Range(0, interlocks.Length)], i => interlocks[i].Place);
        var grips = interlocks.SelectMany(GripsOf).ToLookup(grip => grip.Rack, grip => grip.Grip);
        byRack = [.. site.Racks.Select(rack => grips[rack.Id].ToImmutableArray())];
        isTold = new bool[interlocks.Length];
        moved = new int[interlocks.Length];
    }

    /// <summary>Those whose answer is another than at the scan before, by place in the table.</summary>
    public ReadOnlySpan<int> Moved => moved.AsSpan(0, movedCount);

    /// <summary>Lets every interlock of the areas that are called look, and tells when one acts or returns.</summary>
    public void Look(Attention attention, Facts facts, IEventSink events)
    {
        movedCount = 0;
        foreach (var area in attention.Called)
        {
            facts.AskedBy(area);
            foreach (var i in byArea[area.Index])
            {
                if (interlocks[i].Look(facts, area.Agenda) || attention.IsEverybodyCalled)
                {
                    moved[movedCount++] = i;
                    Follow(i, facts.Now, events);
                }
            }
        }
    }

    /// <summary>Adds to the decisions of a rack what objects to its loads, after everybody concerned has looked.</summary>
    public void Object(RackId rack, Span<Decision> decisions)
    {
        foreach (var grip in byRack[rack.Index])
        {
            var interlock = interlocks[grip.Interlock];
            if (!interlock.Objects)
            {
                continue;
            }

            foreach (var load in grip.Loads)
            {
                if (!interlock.ActsOn(load))
                {
                    continue;
                }

                ref var decision = ref decisions[load.Index];
                decision = interlock.Row.Effect == RowEffect.SafeState
                    ? decision with { SafeStater = grip.Interlock }
                    : decision with { Forbidder = decision.Forbidder ?? grip.Interlock };
            }
        }
    }

    /// <summary>By how much more than their nameplates the loads of a circuit draw, as far as an interlock of it knows.</summary>
    public double CurrentFactor(Area circuit)
    {
        var factor = 1.0;
        foreach (var i in byArea[circuit.Index])
        {
            factor = Math.Max(factor, interlocks[i].CurrentFactor);
        }

        return factor;
    }

    /// <summary>Whether an interlock of a circuit keeps it quiet, so that its loads come back one at a time.</summary>
    public bool KeepsQuiet(Area circuit)
    {
        foreach (var i in byArea[circuit.Index])
        {
            if (interlocks[i].StagesReturn && interlocks[i].Objects)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Why an interlock objects, in words.</summary>
    public string Words(int interlock, ClockFace clock) => interlocks[interlock].Words(clock);

    /// <summary>What every interlock that objects to a load says.</summary>
    public ImmutableArray<string> AllWords(Load load, ClockFace clock) =>
    [
        .. byRack[load.Rack.Index]
            .Where(grip => interlocks[grip.Interlock].Objects && grip.Loads.Contains(load.Id) && interlocks[grip.Interlock].ActsOn(load.Id))
            .Select(grip => interlocks[grip.Interlock])
            .Select(interlock => $"{interlock.Row.Id}: {interlock.Words(clock)}"),
    ];

    private IEnumerable<(RackId Rack, Grip Grip)> GripsOf(Interlock interlock, int i) =>
        interlock.Loads.GroupBy(load => site[load].Rack).Select(loads => (loads.Key, new Grip(i, [.. loads])));

    private void Follow(int i, in Moment now, IEventSink events)
    {
        var acts = interlocks[i].Objects && (isTold[i] || interlocks[i].IsNews);
        if (acts != isTold[i])
        {
            isTold[i] = acts;
            Tell(interlocks[i], now, events);
        }
    }

    private void Tell(Interlock interlock, in Moment now, IEventSink events) => events.Take(new ControlEvent(
        now, EventKind.Interlock, interlock.Key,
        interlock.Objects ? interlock.IsLatched ? "latched" : "acts" : "returned",
        interlock.Objects ? interlock.Words(new ClockFace(now, site.Zone)) : "its cause is gone"));

    /// <summary>Which loads of a rack an interlock acts on, wherever the interlock stands.</summary>
    private readonly record struct Grip(int Interlock, ImmutableArray<LoadId> Loads);
}
