using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>What a current that is not as it should be makes suspect: it proves nothing, and lets a check prove it.</summary>
/// <param name="loads">The loads of the circuit.</param>
internal sealed class LoadSuspicions(ImmutableArray<LoadBelief> loads)
{
    // Of what was switched no more can be missing than it draws, and some.
    private const double MostShare = 1.35;

    /// <summary>What stopped or began to draw while another was switched.</summary>
    public void OfOthers(double missingA, double switchedA)
    {
        var isExplained = missingA <= MostShare * switchedA;
        foreach (var load in loads)
        {
            if (load.Switched != 0)
            {
                continue;
            }

            load.SawFall &= !load.MayBe(-missingA);
            load.IsSeenAlone &= !load.MayBe(Math.Abs(missingA));
            if (load.IsTold && load.Flow != Flow.Still && load.IsLike(missingA))
            {
                load.LostA += missingA;
                load.Flow = Flow.SeemsStill;
                isExplained = true;
            }
        }

        if (!isExplained)
        {
            OfSeveral(missingA);
        }
    }

    /// <summary>A pump whose relay welds while something else is switched harms; others are found when they are next switched.</summary>
    /// <param name="riseA">By how much more it has risen than was meant, A.</param>
    /// <param name="fromA">What flowed before, A.</param>
    public void OfPump(double riseA, double fromA)
    {
        foreach (var load in loads)
        {
            var isPumpAtRest = load is { Load.Kind: LoadKind.Pump, Switched: 0, IsTold: false };
            if (isPumpAtRest && load.Flow != Flow.Flows && load.IsLike(riseA) && !load.IsExcused(riseA, fromA))
            {
                load.Flow = Flow.SeemsToFlow;
            }
        }
    }

    /// <summary>More has gone than any one of them draws: several may have stopped in one moment.</summary>
    /// <param name="lostA">How much, A; less than 0 where it has risen, which suspects none.</param>
    public void OfSeveral(double lostA)
    {
        foreach (var load in loads)
        {
            if (load is { IsTold: true, IsSeen: true, Switched: 0 } && load.Flow != Flow.Still && load.MayBePartOf(lostA))
            {
                load.Flow = Flow.SeemsStill;
            }
        }
    }

    /// <summary>Lights of one make draw as much as each other: where one of them flows, it may be any of them. A dark moment more would
    /// tell no more of a light; of a pump it is asked until it is known.</summary>
    public void OfThoseLike(double valueA)
    {
        foreach (var load in loads)
        {
            if (load.Flow != Flow.Flows && load.IsLike(valueA))
            {
                load.Flow = load.Load.Kind == LoadKind.Pump ? Flow.SeemsToFlow : Flow.MayFlow;
            }
        }
    }
}
