namespace RackController.Plant;

/// <summary>A pipe close to a flow that is known: its loss as a straight line.</summary>
/// <param name="FlowM3PerS">The flow.</param>
/// <param name="LossM">Head lost there, m.</param>
/// <param name="Slope">Its derivative by the flow, s/m2; above 0.</param>
internal readonly record struct PipeTangent(double FlowM3PerS, double LossM, double Slope)
{
    /// <summary>The tangent of a pipe.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="flow">Where it touches, m3/s.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    public static PipeTangent Of(in Pipe pipe, double flow, double viscosity)
    {
        var loss = pipe.Loss(flow, viscosity, out var slope);
        return new PipeTangent(flow, loss, slope);
    }

    /// <summary>Whether there is a flow, of which a slightly other one may be thought.</summary>
    public bool Carries => FlowM3PerS > 0;

    /// <summary>Head lost at a flow close to that, m.</summary>
    public double LossAt(double flow) => LossM + Slope * (flow - FlowM3PerS);

    /// <summary>Flow at a head close to that, m3/s.</summary>
    public double FlowAt(double headM) => FlowM3PerS + (headM - LossM) / Slope;
}
