using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Third step of a scan: every interlock looks at the same facts, and their objections come together per load.</summary>
internal sealed class InterlockPanel
{
    private readonly Site site;
    private readonly ImmutableArray<Interlock> interlocks;
    private readonly bool[] isTold;

    public InterlockPanel(Site site, ImmutableArray<Interlock> interlocks)
    {
        this.site = site;
        this.interlocks = interlocks;
        isTold = new bool[interlocks.Length];
    }

    /// <summary>Lets every interlock look, adds its objection to the decisions, and tells when one acts or returns.</summary>
    public void Look(Facts facts, Span<Decision> decisions, Span<bool> circuitIsQuiet, Agenda agenda, IEventSink events)
    {
        circuitIsQuiet.Clear();
        for (var i = 0; i < interlocks.Length; i++)
        {
            var interlock = interlocks[i];
            interlock.Look(facts, agenda);
            if (interlock.Objects)
            {
                Object(i, interlock, decisions, circuitIsQuiet);
            }

            var acts = interlock.Objects && (isTold[i] || interlock.IsNews);
            if (acts != isTold[i])
            {
                isTold[i] = acts;
                Tell(interlock, facts.Now, events);
            }
        }
    }

    /// <summary>Why an interlock objects, in words.</summary>
    public string Words(int interlock, ClockFace clock) => interlocks[interlock].Words(clock);

    /// <summary>What every interlock that objects to a load says.</summary>
    public ImmutableArray<string> AllWords(LoadId load, ClockFace clock) =>
    [
        .. interlocks.Where(interlock => interlock.Objects && interlock.Loads.Contains(load))
            .Select(interlock => $"{interlock.Row.Id}: {interlock.Words(clock)}"),
    ];

    private static void Object(int i, Interlock interlock, Span<Decision> decisions, Span<bool> circuitIsQuiet)
    {
        foreach (var load in interlock.Loads)
        {
            ref var decision = ref decisions[load.Index];
            decision = interlock.Row.Effect == RowEffect.SafeState
                ? decision with { SafeStater = decision.SafeStater < 0 ? i : decision.SafeStater }
                : decision with { Forbidder = decision.Forbidder < 0 ? i : decision.Forbidder };
        }

        if (interlock.QuietCircuit is { } circuit)
        {
            circuitIsQuiet[circuit.Index] = true;
        }
    }

    private void Tell(Interlock interlock, in Moment now, IEventSink events) => events.Take(new ControlEvent(
        now, EventKind.Interlock, interlock.Key,
        interlock.Objects ? interlock.IsLatched ? "latched" : "acts" : "returned",
        interlock.Objects ? interlock.Words(new ClockFace(now, site.Zone)) : "its cause is gone"));
}
