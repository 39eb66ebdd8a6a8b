namespace RackController.Plant;

/// <summary>
/// The air of one tier: warmed by its light, cooled by what evaporates into it, and exchanged with the room's, faster while a fan
/// runs. Heat also leaves through shelf and frame, so it leaves more easily than vapour. Resistances, capacity and flows are
/// assumptions of ours, common practice, no source: minutes, not seconds and not hours.
/// </summary>
internal static class TierAir
{
    private const double StillLossWPerK = 20;
    private const double FannedLossWPerK = 50;

    // Shelf, wet media and tray walls follow the air.
    private const double HeatJPerK = 30_000;

    // The tier's air and what of the aisle's moves with it.
    private const double MixedM3 = 2.0;
    private const double StillExchangeM3PerS = 0.004;
    private const double FannedExchangeM3PerS = 0.010;

    // Gas constant of water vapour, 461.5 J/(kg K), in kPa.
    private const double VapourKPaM3PerKgK = 0.4615;
    private const double ZeroCelsiusK = 273.15;

    /// <summary>How fast its temperature rises, K/s.</summary>
    /// <param name="airC">Its temperature.</param>
    /// <param name="roomC">The room's.</param>
    /// <param name="heatW">What warms it: the light's power less the heat that goes into vapour, W.</param>
    /// <param name="fanRuns">Whether a fan moves it.</param>
    public static double WarmingKPerS(double airC, double roomC, double heatW, bool fanRuns) =>
        (heatW + (fanRuns ? FannedLossWPerK : StillLossWPerK) * (roomC - airC)) / HeatJPerK;

    /// <summary>How fast its vapour pressure rises, kPa/s: ideal gas, e V = m R T.</summary>
    /// <param name="vapourKPa">Its vapour pressure, kPa.</param>
    /// <param name="roomKPa">The room's, kPa.</param>
    /// <param name="airC">Its temperature.</param>
    /// <param name="evaporatedKgPerS">Water that becomes vapour in it, kg/s.</param>
    /// <param name="fanRuns">Whether a fan moves it.</param>
    public static double MoisteningKPaPerS(double vapourKPa, double roomKPa, double airC, double evaporatedKgPerS, bool fanRuns) =>
        (evaporatedKgPerS * VapourKPaM3PerKgK * (airC + ZeroCelsiusK)
            + (fanRuns ? FannedExchangeM3PerS : StillExchangeM3PerS) * (roomKPa - vapourKPa)) / MixedM3;
}
