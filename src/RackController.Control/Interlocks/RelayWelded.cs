using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Notices a relay that was told off and still passes current. No command can open it: where a pump runs on, the contactor of its
/// circuit is opened, which takes light and air away too. Hazard: a pump that nobody can stop floods the floor and burns. A light or a
/// valve that stays on is told of and leaves the air alone. Only a person who has changed the relay may let it go.
/// </summary>
/// <param name="row">The row.</param>
/// <param name="load">The load behind the relay.</param>
/// <param name="circuit">Its circuit.</param>
internal sealed class RelayWelded(CauseAndEffectRow row, Load load, Circuit circuit)
    : Interlock(row, Place.Of(load), [])
{
    private MonotonicTime? cutSince;
    private bool flowsThoughCut;

    public override ImmutableArray<CircuitId> MayCut { get; } =
        load.Kind == LoadKind.Pump && circuit.HasUpstreamContactor ? [circuit.Id] : [];

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var isPresent = facts.FlowOf(load.Id) == Flow.Flows && !facts.WasOn(load.Id);
        flowsThoughCut = isPresent && IsCutForGood(facts, agenda);

        // While outputs fail, what can only be told of comes back with them. What is cut stays cut: nothing flows behind an open contactor,
        // and that is no proof that the pump would stop.
        if (isPresent && (facts.Conditions.Io.IsOk || !MayCut.IsEmpty))
        {
            Latch();
        }

        return isPresent;
    }

    private bool IsCutForGood(Facts facts, Agenda agenda)
    {
        if (!facts.WasCut(circuit.Id))
        {
            cutSince = null;
            return false;
        }

        var known = (cutSince ??= facts.Now.Monotonic) + WireCurrent.Settles;
        if (facts.Now.Monotonic < known)
        {
            agenda.Add(known);
            return false;
        }

        return true;
    }

    public override string Words(ClockFace clock)
    {
        var found = $"{load.Name} {(Present ? "draws" : "drew")} current though its relay is told off";
        return flowsThoughCut ? $"{found}, and the contactor does not cut it"
            : MayCut.IsEmpty ? found
            : $"{found}, and the contactor cuts {circuit.Name} until somebody has looked and resets";
    }
}
