using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>What the changes of a circuit's current tell of its loads.</summary>
internal sealed class LoadBeliefs
{
    private readonly CircuitHearing hearing;
    private readonly ImmutableArray<LoadBelief> loads;
    private readonly LoadSuspicions suspicions;
    private readonly AloneCurrent alone;

    public LoadBeliefs(Site site, Circuit circuit)
    {
        hearing = new CircuitHearing(circuit);
        loads =
        [
            .. site.Loads.Where(load => load.Circuit == circuit.Id).Select(load => new LoadBelief(
                load, load.CurrentA(circuit.VoltageV))
            {
                IsTold = load.SafeState == SwitchState.On,
                Wire = LoadCurrents.InItsWire(site, load)?.Id,
            }),
        ];
        suspicions = new LoadSuspicions(loads);
        alone = new AloneCurrent(loads, suspicions);
        See();
    }

    /// <summary>Whether any was switched since the current last settled; one that was switched to and fro was not.</summary>
    public bool AnySwitched
    {
        get
        {
            foreach (var load in loads)
            {
                if (load.Switched != 0)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>Whether the sensor of the circuit hears nothing.</summary>
    public bool IsDeaf => hearing.IsDeaf;

    /// <summary>Whether any is told on.</summary>
    public bool IsAnyTold
    {
        get
        {
            foreach (var load in loads)
            {
                if (load.IsTold)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>Whether a load draws enough to be told apart on its circuit.</summary>
    public static bool IsSeen(Site site, Load load)
    {
        var circuit = site[load.Circuit];
        return LoadBelief.IsSeenBy(load.CurrentA(circuit.VoltageV), CircuitHearing.ResolvedA(circuit));
    }

    /// <summary>What is believed of a load of the circuit.</summary>
    public LoadBelief Of(LoadId load) => loads.Single(each => each.Load.Id == load);

    /// <summary>Follows what the loads are told.</summary>
    /// <returns>Whether any was switched.</returns>
    public bool FollowSwitching(Facts facts)
    {
        var any = false;
        foreach (var load in loads)
        {
            var isTold = facts.WasOn(load.Load.Id);
            load.HasOwnWord = load.Wire is { } wire && facts.IsKnown(wire);
            if (isTold != load.IsTold)
            {
                load.IsTold = isTold;
                load.Switched += isTold ? 1 : -1;
                any = true;
            }
        }

        return any;
    }

    /// <summary>Says what is believed.</summary>
    public void Say(Facts facts, bool isKnown)
    {
        foreach (var load in loads)
        {
            var isSaid = load.Switched == 0 && (load.IsSeen || load is { IsSeenAlone: true, Flow: Flow.Still });
            facts.SetFlow(load.Load.Id, isKnown && isSaid ? load.Flow : Flow.Unknown);
        }
    }

    /// <summary>Nobody saw what the last switching did.</summary>
    public void ForgetSwitched()
    {
        alone.Forget();
        foreach (var load in loads)
        {
            load.Flow = load.Switched == 0 ? load.Flow : Flow.Unknown;
            load.SawFall = false;
            load.IsSeenAlone = false;
            load.Switched = 0;
        }
    }

    /// <summary>Judges the loads that were switched since the current of the circuit last settled.</summary>
    /// <param name="changeA">By how much it has changed, A.</param>
    /// <param name="valueA">What it is now, A.</param>
    /// <param name="sinceSettledA">By how much it has changed since it last settled, A: just before the switching it may have shown a
    /// start.</param>
    public void Judge(double changeA, double valueA, double sinceSettledA)
    {
        var (expectedA, squaredDoubt, switchedA, switched) = (0.0, 0.0, 0.0, 0);
        foreach (var load in loads)
        {
            expectedA += load.ExpectedA;
            squaredDoubt += load.DoubtA * load.DoubtA;
            switchedA += Math.Abs(load.ExpectedA);
            switched += Math.Abs(load.Switched);
        }

        hearing.Follow(changeA, expectedA, isAllOff: !IsAnyTold);
        // Of a sensor that says that nothing flows, what was told on may just as well be dead.
        if (IsDeaf && valueA >= hearing.LeastA)
        {
            Forget();
            return;
        }

        var missingA = expectedA - changeA;
        suspicions.OfOthers(missingA, switchedA);
        suspicions.OfPump(sinceSettledA - expectedA, valueA - sinceSettledA);
        var alike = 0;
        foreach (var load in loads)
        {
            alike += load.Switched != 0 && load.IsLike(Math.Abs(missingA)) ? 1 : 0;
        }

        foreach (var load in loads)
        {
            if (load.Switched != 0)
            {
                var othersDoubtA = Math.Sqrt(Math.Max(0, squaredDoubt - load.DoubtA * load.DoubtA));
                var isAlone = switched == 1;
                var standsOut = isAlone || (alike == 1 && load.IsLike(Math.Abs(missingA)));
                Judge(load, missingA, hearing.LeastA + othersDoubtA, isAlone, standsOut, valueA);
            }
        }

        alone.Answer(isIdle: false);

        // One may have been found to draw too little for that.
        See();
    }

    private void Forget()
    {
        foreach (var load in loads)
        {
            load.Flow = Flow.Unknown;
        }

        ForgetSwitched();
    }

    private static void Judge(LoadBelief load, double missingA, double doubtA, bool isAlone, bool standsOut, double valueA)
    {
        var isOn = load.IsTold;
        var followed = double.IsNaN(missingA) ? null : load.Followed(isOn ? missingA : -missingA, doubtA);
        if (followed == true && isAlone)
        {
            load.Learn(Math.Abs(load.ExpectedA - missingA));
        }

        load.Flow = followed is null ? Flow.Unknown
            : isOn ? followed.Value || load.IsSuspect || load.MayStayOn ? Flow.Flows : Flow.Still
            : followed.Value || !KeepsFlowing(load, valueA) ? Flow.Still
            : standsOut ? Flow.Flows : Flow.SeemsToFlow;
        load.StaysOn = followed == false && load.Flow == Flow.Flows && (load.StaysOn || (isOn && load.MayStayOn));
        load.MayStayOn &= !isOn || followed is null;
        load.WasDead = isOn ? load.Flow == Flow.Still : load.WasDead;
        load.SawFall = !isOn && followed == true;
        load.IsSeenAlone = false;
        load.Switched = 0;
        load.LostA = 0;
    }

    // A fan or aerator that does not follow is taken for dead, which harms, and not for welded, which does not, unless that is known.
    private static bool KeepsFlowing(LoadBelief load, double valueA) =>
        valueA >= load.DrawsA / 2 && load.Flow != Flow.Still && !load.WasLost && (!load.IsAir || load.StaysOn);

    /// <summary>Takes what changed although nobody switched anything: it makes suspicious, and proves nothing.</summary>
    /// <param name="changeA">By how much, A; not a number where that is unknown.</param>
    /// <param name="fromA">What flowed before, A; the same.</param>
    public void Wander(double changeA, double fromA)
    {
        hearing.Wander(changeA);
        See();
        LoadBelief? rises = null;
        var isExplained = false;
        foreach (var load in loads)
        {
            load.SawFall &= !load.MayBe(changeA);
            load.IsSeenAlone &= !load.MayBe(Math.Abs(changeA));
            load.LostA = load.WasTold && !double.IsNaN(changeA) ? Math.Max(0, load.LostA - changeA) : 0;
            if (load.WasTold && (load.IsLike(-changeA) || (load.Flow == Flow.Still && load.IsLike(changeA))))
            {
                load.Flow = Flow.SeemsStill;
                isExplained = true;
            }
            else if (!load.WasTold && load.Flow == Flow.Flows && load.IsLike(-changeA))
            {
                // Somebody may have pulled its plug.
                load.Flow = Flow.SeemsToFlow;
                isExplained = true;
            }
            else if (!load.WasTold && load.Flow != Flow.Flows && load.IsLike(changeA) && !load.IsExcused(changeA, fromA))
            {
                rises = rises is null || load.IsLiker(changeA, rises) ? load : rises;
            }
        }

        if (rises is not null)
        {
            rises.Flow = Flow.SeemsToFlow;
        }

        if (!isExplained)
        {
            suspicions.OfSeveral(-changeA);
        }
    }

    /// <summary>Nobody was switched for a while.</summary>
    public void Rest()
    {
        if (IsAnyTold)
        {
            alone.Answer(isIdle: true);
        }
    }

    /// <summary>Whatever else is unknown: what is not there does not flow, and what is there while everything is told off flows where it
    /// should not.</summary>
    /// <param name="valueA">The current of the circuit, A.</param>
    public void Bound(double valueA)
    {
        if (IsDeaf)
        {
            return;
        }

        var isAnyTold = IsAnyTold;
        foreach (var load in loads)
        {
            var isTooFaint = !load.IsTold && alone.RestFor(load, valueA) < load.DrawsA / 2;
            if (isTooFaint && (!isAnyTold || load.IsSuspect))
            {
                load.Flow = Flow.Still;
            }

            load.IsSeenAlone |= isTooFaint && !isAnyTold;
        }

        if (!isAnyTold)
        {
            alone.Look(valueA);
        }
    }

    private void See()
    {
        foreach (var load in loads)
        {
            load.IsSeen = LoadBelief.IsSeenBy(load.DrawsA, hearing.LeastA);
        }
    }
}
