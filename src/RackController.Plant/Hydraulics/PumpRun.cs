namespace RackController.Plant;

/// <summary>The way from the reservoir through pump, screen and pipe to the lowest tee.</summary>
internal sealed class PumpRun(Pipe pipe)
{
    // Newton's error falls to its square at each step, so a step this small leaves an error near 1e-12.
    private const double LastStep = 1e-6;
    private const double SmallestFlow = 1e-15;
    private const int MaximumRounds = 100;

    /// <summary>Head that the way needs beyond what there is, m; grows strictly with the flow.</summary>
    /// <param name="supply">Pump, screen and water.</param>
    /// <param name="headM">Height of the reservoir's surface above the head at the tee, m.</param>
    /// <param name="flow">Flow, m3/s; negative when water runs back.</param>
    /// <param name="slope">Its derivative by the flow, s/m2; above 0.</param>
    public double Excess(in SupplyConditions supply, double headM, double flow, out double slope)
    {
        var loss = pipe.WithAdded(supply.ScreenLossK).Loss(flow, supply.Viscosity, out var lossSlope);
        var given = supply.Pump.Head(flow, supply.Viscosity, out var pumpSlope);
        slope = lossSlope - pumpSlope;
        return loss - given - headM;
    }

    /// <summary>The flow at which nothing is in excess, by Newton's method in a bracket that bisection closes.</summary>
    /// <param name="supply">Pump, screen and water.</param>
    /// <param name="headM">Height of the reservoir's surface above the head at the tee, m.</param>
    /// <param name="last">Where the search begins; any.</param>
    public PipeTangent At(in SupplyConditions supply, double headM, in PipeTangent last)
    {
        var guess = last.Slope > 0 ? last.FlowAt(headM) : 0;
        // A pump never gives more than at no flow, nor resists backward flow less: the bare pipe bounds the flow both ways.
        var drive = headM + supply.Pump.ShutOffHeadM;
        var bound = pipe.LargestFlow(Math.Abs(drive), supply.Viscosity);
        var (low, high) = drive < 0 ? (-bound, 0.0) : (0.0, bound);
        var flow = guess > low && guess < high ? guess : (low + high) / 2;
        var slope = 0.0;
        for (var round = 0; round < MaximumRounds; round++)
        {
            var excess = Excess(supply, headM, flow, out slope);
            if (excess > 0)
            {
                high = flow;
            }
            else
            {
                low = flow;
            }

            var next = flow - excess / slope;
            if (Math.Abs(next - flow) <= LastStep * Math.Abs(flow) + SmallestFlow)
            {
                flow = next;
                break;
            }

            flow = next > low && next < high ? next : (low + high) / 2;
        }

        return new PipeTangent(flow, headM, slope);
    }
}
