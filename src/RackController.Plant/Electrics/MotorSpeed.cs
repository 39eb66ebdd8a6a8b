namespace RackController.Plant;

/// <summary>
/// How fast a small induction motor turns at less than its voltage. Near its speed its torque is as V^2 s with s the slip behind
/// the field (textbooks of electrical machines, from memory), and what a pump or fan takes is as n^2 (affinity laws,
/// kb.eng-software.com page 23068780), so v^2 s / s0 = n^2 with 1 - s = n (1 - s0). Torque times the speed of the field is what it
/// draws, so its real power is as n^2 and its current as n^2 / v.
/// <para>A slip of 10 % at full voltage is common practice for shaded poles, no source. A pump with a permanent magnet keeps its
/// speed until it falls out of step; this is not it.</para>
/// </summary>
internal static class MotorSpeed
{
    private const double RatedSlipShare = 0.1;

    /// <summary>Its speed as a share of that at full voltage.</summary>
    /// <param name="voltageShare">Share of its voltage that is there: above 0.</param>
    public static double Share(double voltageShare)
    {
        var field = voltageShare * (1 - RatedSlipShare);
        return 2 * voltageShare / (field + Math.Sqrt(field * field + 4 * RatedSlipShare));
    }
}
