using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// How much of its voltage a load needs in a brown-out, by its kind. Assumptions of ours, each with its reason:
/// drivers of lights are made for 100 to 240 V less 10 %, and give out below 90 V; a motor's torque falls as the square of its
/// voltage, and at 60 % a third of it is left: it stalls (common practice, no source); the coil of a valve, like that of a
/// contactor to IEC 60947-4-1 (from memory), pulls in from 85 % and lets go between 75 and 20 %, here at 60 %.
/// </summary>
/// <param name="StartsFromShare">Share of its circuit's voltage from which it starts.</param>
/// <param name="HoldsFromShare">Share from which it goes on once it has started.</param>
internal readonly record struct VoltageNeed(double StartsFromShare, double HoldsFromShare)
{
    /// <summary>Share of its circuit's voltage from which an opto-coupler senses the supply: the upper end of where undervoltage
    /// releases to IEC 60947-2 open, 70 to 35 % (from memory).</summary>
    public const double SensedFromShare = 0.7;

    private const double DriverV = 90;

    /// <summary>What a load of a kind needs.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="circuitV">The voltage of its circuit.</param>
    public static VoltageNeed Of(LoadKind kind, double circuitV) => kind switch
    {
        LoadKind.Light => new VoltageNeed(DriverV / circuitV, DriverV / circuitV),
        LoadKind.Valve => new VoltageNeed(0.85, 0.6),
        LoadKind.Pump or LoadKind.Fan or LoadKind.Aerator => new VoltageNeed(0.6, 0.6),
        _ => throw new InvariantBrokenException($"every kind of load has its need of voltage, {kind} too"),
    };
}
