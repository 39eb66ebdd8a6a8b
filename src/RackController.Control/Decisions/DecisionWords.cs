using RackController.Model;

namespace RackController.Control;

/// <summary>Puts decisions into words: the one place where live status, journal, bench and <c>why</c> get them from.</summary>
internal readonly struct DecisionWords(Parts parts, ClockFace clock)
{
    /// <summary>Why a load is in its state.</summary>
    public LoadWhy Why(Load load, SwitchState state, in Decision decision)
    {
        var demand = parts.Demands[load.Rack.Index].Words(decision.Demand, load.Id, clock.Now);
        var admission = parts.Admission.Words(load.Id, clock);
        return new LoadWhy(
            load.Id, state, demand, parts.Interlocks.AllWords(load, clock), admission,
            Summary(load, decision, demand, admission));
    }

    private string Summary(Load load, in Decision decision, string demand, string admission)
    {
        if (decision.Forbidder is { } forbidder && (decision.Demand.State == SwitchState.On || decision.SafeStater is not null))
        {
            return parts.Interlocks.Words(forbidder, clock);
        }

        if (decision.SafeStater is { } safeStater)
        {
            return parts.Interlocks.Words(safeStater, clock);
        }

        var waits = parts.Admission.Result(load.Id).Outcome is not (AdmissionOutcome.Admitted or AdmissionOutcome.NotAsked);
        return waits ? admission : demand;
    }
}
