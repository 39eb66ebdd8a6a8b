using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Whose the current is that flows while everything on a circuit is told off, and, where a pump and the air are alike in that,
/// what is seen as the air comes back.</summary>
/// <param name="loads">The loads of the circuit.</param>
/// <param name="isSeen">Whether a load draws enough to be told apart.</param>
internal sealed class PlainAlone(List<PlainLoad> loads, Func<PlainLoad, bool> isSeen)
{
    private (PlainLoad Pump, double SaidA)? asked;

    /// <summary>What a load may draw of a current, beside those that are known to draw theirs though told off.</summary>
    public double Left(double saidA, PlainLoad? load = null) =>
        loads.Where(other => other != load && other is { StaysOn: true, IsTold: false })
            .Aggregate(saidA, (left, other) => left - other.DrawsA);

    /// <summary>Everything is told off.</summary>
    public void Reads(double saidA)
    {
        Forget();
        foreach (var load in loads.Where(load => load.StaysOn))
        {
            load.StaysOn = Left(saidA, load) >= load.DrawsA / 2;
            load.Flow = load.StaysOn ? Flow.Flows : load.Flow;
        }

        var leftA = Left(saidA);
        bool IsLike(PlainLoad load) => isSeen(load) && load.OffAlone(leftA) <= 0.35;
        var alike = loads.Where(load => !load.StaysOn && IsLike(load)).ToList();
        var pump = alike.Where(load => load.Load.Kind == LoadKind.Pump).MinBy(load => load.OffAlone(leftA));
        var air = loads.Where(load => load is { IsAir: true, StaysOn: false, WasDead: false }).ToList();
        var airAlike = air.Where(IsLike).ToList();
        var airA = air.Sum(load => load.DrawsA);
        airAlike = airAlike.Count == 0 && Math.Abs(leftA - airA) <= 0.35 * airA ? air : airAlike;
        if (alike.Count > 0 && pump is { Flow: not Flow.Flows } && airAlike.Count > 0)
        {
            asked = (pump, saidA);
            airAlike.ForEach(load => load.MayStayOn = true);
            pump.Flow = Flow.SeemsToFlow;
        }
        else if (alike.MinBy(load => load.OffAlone(leftA)) is { } alone)
        {
            // Who did not stop when told off, before who merely draws as much; but a pump comes before all.
            var known = alike.Where(load => load.Flow == Flow.Flows && load.Load.Kind != LoadKind.Pump);
            alone = alone == pump ? alone : known.MinBy(load => load.OffAlone(leftA)) ?? alone;
            (alone.Flow, alone.IsSeenAlone) = (Flow.Flows, true);
            foreach (var other in loads.Where(load => load.Flow != Flow.Flows && isSeen(load)
                && Math.Abs(leftA - load.DrawsA) <= 0.35 * load.DrawsA))
            {
                other.Flow = other.Load.Kind == LoadKind.Pump ? Flow.SeemsToFlow : Flow.MayFlow;
            }
        }
    }

    /// <summary>Some were told on since, or, long enough after, nobody was.</summary>
    public void Answers(bool isLast)
    {
        if (asked is not { Pump: { IsTold: false } pump, SaidA: var saidA })
        {
            Forget();
            return;
        }

        var leftA = loads.Where(load => load.StaysOn).Aggregate(saidA, (left, load) => left - load.DrawsA);
        var other = loads.Where(load => load.MayStayOn).MinBy(load => load.OffAlone(leftA));
        if (leftA < pump.DrawsA / 2)
        {
            pump.Flow = Flow.Still;
        }
        else if (other is null || (isLast && pump.OffAlone(leftA) <= other.OffAlone(leftA)))
        {
            (pump.Flow, pump.IsSeenAlone) = (Flow.Flows, true);
        }
        else if (isLast)
        {
            pump.Flow = Flow.Still;
            (other.Flow, other.StaysOn) = (Flow.Flows, true);
        }
        else
        {
            return;
        }

        Forget();
    }

    /// <summary>Nothing is asked any more.</summary>
    public void Forget()
    {
        asked = null;
        loads.ForEach(load => load.MayStayOn = false);
    }
}
