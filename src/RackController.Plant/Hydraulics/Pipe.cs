namespace RackController.Plant;

/// <summary>
/// A full round pipe with its minor losses: head loss h = (f L/D + K) V^2 / (2 g) (Darcy and Weisbach), flow in either
/// direction. Loss grows strictly with flow, which is what the network solver rests on.
/// </summary>
internal readonly record struct Pipe
{
    /// <summary>Roughness of drawn tubing, m: 1.5e-6 (table at lmnoeng.com/surface.htm).</summary>
    public const double DrawnTubingRoughnessM = 1.5e-6;

    // A pipe that is written without length and minor losses would carry anything.
    private const double SmallestMinorLossK = 1e-3;
    private const double SmallestSlope = 1e-9;
    private const double SmallestFlow = 1e-15;

    // Newton's error falls to its square at each step, so a step this small leaves an error near 1e-12.
    private const double LastStep = 1e-6;
    private const int MaximumRounds = 100;

    private readonly double lengthOverBore;
    private readonly double relativeRoughness;
    private readonly double minorLossK;
    private readonly double reynoldsViscosityPerFlow;
    private readonly double headPerFlowSquared;
    private readonly double laminarHeadPerFlowViscosity;

    public Pipe(double lengthM, double boreM, double minorLossK, double roughnessM)
    {
        var area = Math.PI * boreM * boreM / 4;
        lengthOverBore = lengthM / boreM;
        relativeRoughness = roughnessM / boreM;
        this.minorLossK = lengthM > 0 ? minorLossK : Math.Max(minorLossK, SmallestMinorLossK);
        reynoldsViscosityPerFlow = boreM / area;
        headPerFlowSquared = 1 / (2 * Physics.GravityMPerS2 * area * area);
        laminarHeadPerFlowViscosity = 32 * lengthM / (Physics.GravityMPerS2 * boreM * boreM * area);
    }

    private Pipe(in Pipe other, double minorLossK)
    {
        this = other;
        this.minorLossK = minorLossK;
    }

    /// <summary>The same pipe with a further minor loss, such as a clogged screen.</summary>
    public Pipe WithAdded(double k) => new(this, minorLossK + k);

    /// <summary>Head lost, m, with the sign of the flow.</summary>
    /// <param name="flow">Flow, m3/s.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    /// <param name="slope">Its derivative by the flow, s/m2; above 0.</param>
    public double Loss(double flow, double viscosity, out double slope)
    {
        var size = Math.Abs(flow);
        var reynolds = size * reynoldsViscosityPerFlow / viscosity;
        var dynamic = headPerFlowSquared * size;
        double head;
        if (reynolds <= DarcyFriction.LaminarLimit)
        {
            var laminar = laminarHeadPerFlowViscosity * viscosity;
            head = (laminar + minorLossK * dynamic) * size;
            slope = laminar + 2 * minorLossK * dynamic;
        }
        else
        {
            var factor = DarcyFriction.Factor(reynolds, relativeRoughness, out var factorSlope);
            var sum = factor * lengthOverBore + minorLossK;
            head = sum * dynamic * size;
            slope = 2 * sum * dynamic + factorSlope * reynolds * lengthOverBore * dynamic;
        }

        slope = Math.Max(slope, SmallestSlope);
        return Math.CopySign(head, flow);
    }

    /// <summary>The flow that a head drives, m3/s: <see cref="Loss"/> solved for the flow by Newton's method, kept inside a
    /// bracket that bisection closes when Newton leaves it, so it always ends.</summary>
    /// <param name="head">Head, m, not negative.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    /// <param name="guess">A flow to start from; any.</param>
    /// <param name="slope">The derivative of the loss by the flow there, s/m2.</param>
    public double Flow(double head, double viscosity, double guess, out double slope)
    {
        var low = 0.0;
        var high = LargestFlow(head, viscosity);
        var flow = guess > low && guess < high ? guess : high / 2;
        for (var round = 0; round < MaximumRounds; round++)
        {
            var excess = Loss(flow, viscosity, out slope) - head;
            if (excess > 0)
            {
                high = flow;
            }
            else
            {
                low = flow;
            }

            var next = flow - excess / slope;
            if (Math.Abs(next - flow) <= LastStep * flow + SmallestFlow)
            {
                return next;
            }

            flow = next > low && next < high ? next : (low + high) / 2;
        }

        _ = Loss(flow, viscosity, out slope);
        return flow;
    }

    /// <summary>A flow that loses at least a head, m3/s: both the minor losses alone and laminar friction alone lose less than the
    /// whole, so each bounds the flow from above.</summary>
    /// <param name="head">Head, m, not negative.</param>
    /// <param name="viscosity">Kinematic viscosity, m2/s.</param>
    public double LargestFlow(double head, double viscosity)
    {
        var byMinorLosses = minorLossK > 0 ? Math.Sqrt(head / (minorLossK * headPerFlowSquared)) : double.MaxValue;
        var byFriction = lengthOverBore > 0 ? head / (laminarHeadPerFlowViscosity * viscosity) : double.MaxValue;
        return Math.Min(byMinorLosses, byFriction) * (1 + 1e-9) + SmallestFlow;
    }
}
