using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Admits the loads of one circuit: budget by nameplate, then one relay at a time.</summary>
internal sealed class CircuitAdmission
{
    // Nameplates are sums of decimal fractions: a limit that is met exactly must not fail on the last bit.
    private const double SlackA = 1e-9;

    // A current is read once it has settled, and once more where that reading was too old.
    private static readonly Duration showsAlone = WireCurrent.Settles + WireCurrent.Settles + Duration.FromSeconds(1);

    private readonly Circuit circuit;
    private readonly CircuitLimits limits;
    private readonly ImmutableArray<Candidate> byPriority;
    private readonly MonotonicTime[] offSince;
    private readonly Agenda agenda = new();
    private MonotonicTime lastSwitchedOn;
    private bool lastShowsAlone;
    private MonotonicTime firstTurn;
    private bool isCalled;
    private bool isQuiet;
    private bool isCut;
    private double currentFactor = 1;
    private bool isRestarting;

    public CircuitAdmission(Site site, Circuit circuit, MonotonicTime start)
    {
        this.circuit = circuit;
        limits = CircuitLimits.Of(site, circuit.Id);
        byPriority =
        [
            .. site.Loads.Where(load => load.Circuit == circuit.Id)
                // Of equals, valves come before their pump, so that it never starts against closed ones.
                .OrderBy(load => load.Priority).ThenBy(load => load.Kind == LoadKind.Pump).ThenBy(load => load.Id.Index)
                .Select(load => new Candidate(
                    load.Id, load.CurrentA(circuit.VoltageV), site[load.Rack].Limits.RelayRest, ShowsAlone(site, load))),
        ];
        offSince = new MonotonicTime[byPriority.Length];
        for (var i = 0; i < byPriority.Length; i++)
        {
            offSince[i] = start + -byPriority[i].RelayRest;
        }

        lastSwitchedOn = start + -limits.SwitchingStagger;
        firstTurn = start;
    }

    /// <summary>How long after a load the next one waits, so that its current is seen to rise by itself: only a valve's, since a few watts
    /// do not show beside its pump, and a tier whose valve is dead would stay dry with nobody told.</summary>
    public static Duration AloneFor(Site site, Load load) => ShowsAlone(site, load) ? showsAlone : Duration.Zero;

    public CircuitId Id => circuit.Id;

    /// <summary>Whether the circuit could not carry all that was wanted.</summary>
    public bool IsShedding { get; private set; }

    /// <summary>When its loads must be decided anew if nobody calls before.</summary>
    public MonotonicTime Due => agenda.Earliest;

    /// <summary>What is wanted on it has changed.</summary>
    public void Call() => isCalled = true;

    /// <summary>Somebody looks at it, and an interlock may keep it quiet.</summary>
    public void Call(bool keepsQuiet, double drawsMoreBy)
    {
        isCalled = true;
        isQuiet = keepsQuiet;
        currentFactor = drawsMoreBy;
    }

    /// <summary>Its contactor is open, or closed again; then its loads come back one at a time, the first of them after a moment in which
    /// everything is told off, so that the current of a relay that is still welded stands alone.</summary>
    public void Cut(bool isOpen, MonotonicTime now)
    {
        isCalled = true;
        isCut = isOpen;
        firstTurn = isOpen ? firstTurn : now + Duration.Max(limits.RestartSpacing, showsAlone);
    }

    /// <summary>Decides for its loads, unless nothing changed and nothing is due.</summary>
    /// <returns>Whether it decided.</returns>
    public bool TryAdmit(Facts facts, ReadOnlySpan<bool> wanted, Span<AdmissionResult> results)
    {
        if (!isCalled && facts.Now.Monotonic < Due)
        {
            return false;
        }

        isCalled = false;
        agenda.Begin(facts.Now);
        Admit(facts, wanted, results);
        return true;
    }

    /// <summary>The loads that are admitted now and would not fit if another load were wanted too.</summary>
    public ImmutableArray<LoadId> ShedBeside(LoadId more, ReadOnlySpan<bool> wanted, ReadOnlySpan<AdmissionResult> results)
    {
        var shed = ImmutableArray.CreateBuilder<LoadId>();
        var reservedA = 0.0;
        foreach (var candidate in byPriority)
        {
            var currentA = candidate.CurrentA * currentFactor;
            if (!wanted[candidate.Load.Index] && candidate.Load != more)
            {
                continue;
            }

            if (reservedA + currentA <= circuit.ContinuousLimitA + SlackA)
            {
                reservedA += currentA;
            }
            else if (results[candidate.Load.Index].Outcome == AdmissionOutcome.Admitted)
            {
                shed.Add(candidate.Load);
            }
        }

        return shed.ToImmutable();
    }

    private void Admit(Facts facts, ReadOnlySpan<bool> wanted, Span<AdmissionResult> results)
    {
        isRestarting |= isQuiet || isCut;
        IsShedding = false;
        var someoneWaits = false;
        var reservedA = 0.0;
        for (var i = 0; i < byPriority.Length; i++)
        {
            var candidate = byPriority[i];
            var currentA = candidate.CurrentA * currentFactor;
            ref var result = ref results[candidate.Load.Index];
            if (!wanted[candidate.Load.Index])
            {
                result = default;
            }
            else if (isCut)
            {
                result = new AdmissionResult(AdmissionOutcome.Cut, 0, MonotonicTime.Never);
            }
            else if (reservedA + currentA > circuit.ContinuousLimitA + SlackA)
            {
                result = new AdmissionResult(AdmissionOutcome.OverLimit, reservedA + currentA, MonotonicTime.Never);
                IsShedding = true;
            }
            else
            {
                reservedA += currentA;
                result = SwitchOn(i, reservedA, facts);
                someoneWaits |= result.Outcome != AdmissionOutcome.Admitted;
            }

            NoteSwitching(i, result.Outcome == AdmissionOutcome.Admitted, facts);
        }

        isRestarting &= isQuiet || isCut || someoneWaits;
    }

    private void NoteSwitching(int i, bool isOn, Facts facts)
    {
        var wasOn = facts.WasOn(byPriority[i].Load);
        if (wasOn && !isOn)
        {
            offSince[i] = facts.Now.Monotonic;
        }
    }

    private AdmissionResult SwitchOn(int i, double circuitA, Facts facts)
    {
        var candidate = byPriority[i];
        var now = facts.Now.Monotonic;
        if (facts.WasOn(candidate.Load))
        {
            return new AdmissionResult(AdmissionOutcome.Admitted, circuitA, now);
        }

        var rested = offSince[i] + candidate.RelayRest;
        if (now < rested)
        {
            agenda.Add(rested);
            return new AdmissionResult(AdmissionOutcome.RelayRests, circuitA, rested);
        }

        var stagger = isRestarting ? limits.RestartSpacing : limits.SwitchingStagger;
        var turn = MonotonicTime.Later(firstTurn, lastSwitchedOn + (lastShowsAlone ? Duration.Max(stagger, showsAlone) : stagger));
        if (now < turn)
        {
            agenda.Add(turn);
            return new AdmissionResult(AdmissionOutcome.WaitsItsTurn, circuitA, turn);
        }

        (lastSwitchedOn, lastShowsAlone) = (now, candidate.ShowsAlone);
        return new AdmissionResult(AdmissionOutcome.Admitted, circuitA, now);
    }

    private static bool ShowsAlone(Site site, Load load) => load.Kind == LoadKind.Valve && LoadCurrents.IsMeasured(site, load);

    private readonly record struct Candidate(LoadId Load, double CurrentA, Duration RelayRest, bool ShowsAlone);
}
