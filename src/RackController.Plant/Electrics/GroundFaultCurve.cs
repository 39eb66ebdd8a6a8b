namespace RackController.Plant;

/// <summary>
/// When ground-fault protection opens at a leakage to earth. On 100 to 127 V class A of UL 943: not below 4 mA, must at 6 mA
/// (profengineering.com/glossary/gfci, quoting NEC Art. 100), within T = (20 / I)^1.43 s for 6 to 264 mA (schneider-electric.us
/// FA105578). Above that a residual-current device of 30 mA to IEC 61008-1: not up to 15 mA, must at 30 mA within 0.3 s, at 60 mA
/// within 0.15 s, at 150 mA within 0.04 s (from memory).
/// <para>The slow edge takes all the time and all the leakage that its standard allows. The fast edge opens at the least that
/// may open it, after 25 ms: about a cycle of the mains, common practice, no source.</para>
/// </summary>
internal readonly record struct GroundFaultCurve
{
    private const double FastS = 0.025;
    private const double ClassAMayMilliA = 4;
    private const double ClassAMustMilliA = 6;
    private const double ClassALimitEndsMilliA = 264;
    private const double ResidualMilliA = 30;

    private readonly bool isClassA;
    private readonly BreakerEdge edge;

    private GroundFaultCurve(bool isClassA, BreakerEdge edge)
    {
        this.isClassA = isClassA;
        this.edge = edge;
    }

    /// <summary>The curve of a circuit's protection.</summary>
    /// <param name="voltageV">The circuit's voltage.</param>
    /// <param name="edge">Which end of the standard's band.</param>
    public static GroundFaultCurve Of(double voltageV, BreakerEdge edge) => new(SupplyPractice.IsNorthAmerican(voltageV), edge);

    /// <summary>How long until it opens at a constant leakage, s; infinite when it never does.</summary>
    /// <param name="leakMilliA">Leakage to earth, mA.</param>
    public double SecondsToTrip(double leakMilliA) => (isClassA, edge) switch
    {
        (true, BreakerEdge.Slow) => leakMilliA >= ClassAMustMilliA
            ? Math.Pow(20 / Math.Min(leakMilliA, ClassALimitEndsMilliA), 1.43)
            : double.PositiveInfinity,
        (true, _) => leakMilliA >= ClassAMayMilliA ? FastS : double.PositiveInfinity,
        (false, BreakerEdge.Slow) => leakMilliA >= 5 * ResidualMilliA ? 0.04
            : leakMilliA >= 2 * ResidualMilliA ? 0.15
            : leakMilliA >= ResidualMilliA ? 0.3
            : double.PositiveInfinity,
        (false, _) => leakMilliA > ResidualMilliA / 2 ? FastS : double.PositiveInfinity,
    };
}
