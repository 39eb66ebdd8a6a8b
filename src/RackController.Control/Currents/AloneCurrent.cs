using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Whose a current is that flows while everything on a circuit is told off: of the load that draws about as much. Where that may be a pump
/// or just as well a fan or aerator, or all of those together, it is asked as they come back, which they do first and one at a time:
/// whoever draws current already adds none, and what none of them explains is the pump's. Hazard: a fan whose relay is welded, taken
/// for the pump, costs everybody the air; and a pump taken for the fan floods.
/// </summary>
/// <param name="loads">The loads of the circuit.</param>
/// <param name="suspicions">Who else is suspect.</param>
internal sealed class AloneCurrent(ImmutableArray<LoadBelief> loads, LoadSuspicions suspicions)
{
    private LoadBelief? pump;
    private double aloneA;

    /// <summary>What is left of a current for a load, beside what others are known to draw though told off, A.</summary>
    public double RestFor(LoadBelief? load, double valueA)
    {
        foreach (var other in loads)
        {
            valueA -= other != load && other is { StaysOn: true, IsTold: false } ? other.DrawsA : 0;
        }

        return valueA;
    }

    /// <summary>Takes what flows while everything is told off.</summary>
    public void Look(double valueA)
    {
        Forget();
        aloneA = valueA;
        foreach (var load in loads)
        {
            load.StaysOn &= RestFor(load, valueA) >= load.DrawsA / 2;
            load.Flow = load.StaysOn ? Flow.Flows : load.Flow;
        }

        var restA = RestFor(null, valueA);
        if (Nearest(restA, load => !load.StaysOn) is not { } nearest)
        {
            return;
        }

        pump = Nearest(restA, load => load.Load.Kind == LoadKind.Pump);
        if (pump is { Flow: not Flow.Flows } && MayBeAir(restA))
        {
            pump.Flow = Flow.SeemsToFlow;
            return;
        }

        pump = null;
        if (nearest.Load.Kind != LoadKind.Pump)
        {
            // Of several that draw as much it is the one that was seen not to stop when it was told off.
            nearest = Nearest(restA, load => load is { Flow: Flow.Flows, StaysOn: false, Load.Kind: not LoadKind.Pump }) ?? nearest;
        }

        (nearest.Flow, nearest.IsSeenAlone) = (Flow.Flows, true);
        suspicions.OfThoseLike(restA);
    }

    /// <summary>Takes what became of the loads that were switched since.</summary>
    /// <param name="isIdle">Whether none was: who is not back by now is not wanted, and the likeliest has to do.</param>
    public void Answer(bool isIdle)
    {
        if (pump is not { IsTold: false })
        {
            Forget();
            return;
        }

        var restA = aloneA;
        foreach (var load in loads)
        {
            restA -= load.StaysOn ? load.DrawsA : 0;
        }

        var air = Asked(restA);
        var isPumps = restA >= pump.DrawsA / 2;
        if (isPumps && (air is null || (isIdle && pump.OffAlone(restA) <= air.OffAlone(restA))))
        {
            (pump.Flow, pump.IsSeenAlone) = (Flow.Flows, true);
            Forget();
        }
        else if (!isPumps || isIdle)
        {
            pump.Flow = Flow.Still;
            Keep(isPumps ? air : null);
            Forget();
        }
    }

    /// <summary>Nobody can tell any more.</summary>
    public void Forget()
    {
        pump = null;
        foreach (var load in loads)
        {
            load.MayStayOn = false;
        }
    }

    // The one that is most like it; of several that are together, any.
    private LoadBelief? Asked(double restA)
    {
        LoadBelief? asked = null;
        foreach (var load in loads)
        {
            asked = load.MayStayOn && (asked is null || load.OffAlone(restA) < asked.OffAlone(restA)) ? load : asked;
        }

        return asked;
    }

    private static void Keep(LoadBelief? air)
    {
        if (air is not null)
        {
            (air.Flow, air.StaysOn) = (Flow.Flows, true);
        }
    }

    private LoadBelief? Nearest(double restA, Func<LoadBelief, bool> mayBe)
    {
        LoadBelief? nearest = null;
        foreach (var load in loads)
        {
            if (mayBe(load) && load.IsLikeAlone(restA) && (nearest is null || load.OffAlone(restA) < nearest.OffAlone(restA)))
            {
                nearest = load;
            }
        }

        return nearest;
    }

    // Any of them, or what is wired to be on when nobody tells it anything: all of them together.
    private bool MayBeAir(double restA)
    {
        var (any, allA) = (false, 0.0);
        foreach (var load in loads)
        {
            allA += load.CanStayOn ? load.DrawsA : 0;
            load.MayStayOn = load.CanStayOn && load.IsLikeAlone(restA);
            any |= load.MayStayOn;
        }

        if (!any && LoadBelief.IsAbout(restA, allA))
        {
            any = true;
            foreach (var load in loads)
            {
                load.MayStayOn = load.CanStayOn;
            }
        }

        return any;
    }
}
