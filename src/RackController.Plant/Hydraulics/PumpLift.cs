using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// What stands between the reservoir and the riser: a pump that runs, H = H0 (1 - (Q / Qmax)^n), or one that stands still and
/// is only a passage. Head falls strictly with flow in both, which the network solver rests on.
/// </summary>
internal readonly record struct PumpLift
{
    // Practically shut, yet finite, so that head stays a strictly falling function of flow: 1 m drives 1e-12 m3/s.
    private const double ShutValveHeadPerFlow = 1e12;

    // A nanolitre in a quarter of an hour.
    private const double SmallestFlow = 1e-15;

    private readonly double shutOffHeadM;
    private readonly double maxFlow;
    private readonly double exponent;
    private readonly bool hasCheckValve;
    private readonly Pipe stillPassage;

    private PumpLift(double shutOffHeadM, double maxFlow, double exponent, bool hasCheckValve, in Pipe stillPassage)
    {
        this.shutOffHeadM = shutOffHeadM;
        this.maxFlow = maxFlow;
        this.exponent = exponent;
        this.hasCheckValve = hasCheckValve;
        this.stillPassage = stillPassage;
    }

    /// <summary>A running pump. A worn one follows the affinity laws of a slower one: flow as the speed, head as its square
    /// (kb.eng-software.com, page 23068780). Every step of the integration asks, so nothing is allocated.</summary>
    /// <param name="curve">Its curve when it turns at its full speed.</param>
    /// <param name="speed">Share of its speed that is left: above 0, 1 when new.</param>
    /// <param name="hasCheckValve">Whether water is kept from running back through it.</param>
    public static PumpLift Running(PumpCurve curve, double speed, bool hasCheckValve) => new(
        curve.ShutOffHeadM * speed * speed, curve.MaxFlowLpm * speed / Litres.PerMinutePerM3PerS, curve.Exponent,
        hasCheckValve, default);

    /// <summary>A pump that stands still.</summary>
    /// <param name="passage">The way through its impeller.</param>
    /// <param name="hasCheckValve">Whether water is kept from running back through it.</param>
    public static PumpLift Stopped(in Pipe passage, bool hasCheckValve) => new(0, 0, 0, hasCheckValve, passage);

    /// <summary>Head at no flow, m; 0 when stopped.</summary>
    public double ShutOffHeadM => shutOffHeadM;

    /// <summary>Head that it adds at a flow, m; negative where it only resists.</summary>
    /// <param name="flow">Flow, m3/s; negative when water runs back.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    /// <param name="slope">Its derivative by the flow, s/m2; not above 0.</param>
    public double Head(double flow, double viscosity, out double slope)
    {
        if (flow < 0 && hasCheckValve)
        {
            slope = -ShutValveHeadPerFlow;
            return shutOffHeadM - ShutValveHeadPerFlow * flow;
        }

        if (maxFlow <= 0)
        {
            var loss = stillPassage.Loss(flow, viscosity, out var lossSlope);
            slope = -lossSlope;
            return -loss;
        }

        // Where the curve leaves its shut-off head upright, its slope is that of the smallest flow that anybody tells from none.
        var size = Math.Abs(flow);
        var drop = Drop(size);
        slope = -exponent * (size < SmallestFlow ? Drop(SmallestFlow) / SmallestFlow : drop / size);
        return shutOffHeadM - Math.CopySign(drop, flow);
    }

    private double Drop(double flow)
    {
        var share = flow / maxFlow;
        return shutOffHeadM * (exponent == 2 ? share * share : Math.Pow(share, exponent));
    }
}
