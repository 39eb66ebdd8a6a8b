namespace RackController.Plant;

/// <summary>
/// How oxygen gets into a reservoir and is used up there: it dissolves in proportion to what is missing, dC/dt = KLa (Cs - C) - uptake
/// (reynoldsbauhm.co.uk, aeration science fundamentals), faster in warmer water, KLa(T) = KLa(20) 1.024^(T - 20) (temperature page of
/// ecologycenter.us).
/// <para>How much each way brings is an assumption of ours, common practice, no source. A small air pump brings 0.5 kg of oxygen for
/// each kilowatt-hour into water without any, from stones 0.4 m deep, and in proportion to that depth, since the bubbles rise so far. A
/// quiet surface takes up as if 0.02 m of water under it were saturated each hour. Water that falls back from the trays arrives nine
/// tenths saturated. What lives in the water on debris of roots uses 3 mg an hour for each insert tray at 20 degrees Celsius while the
/// reservoir holds its normal volume, half as much where only 0.5 mg/L are left, and 1.047 times as much for each kelvin more.</para>
/// </summary>
internal static class Aeration
{
    /// <summary>Share of saturation at which water comes back from the trays.</summary>
    public const double ReturnedShare = 0.9;

    private const double SecondsPerHour = 3600;
    private const double AeratorGPerJ = 500 / 3.6e6;
    private const double AeratorDepthM = 0.4;
    private const double SaturatedAt20GPerM3 = 9.092;
    private const double SurfaceMPerS = 0.02 / SecondsPerHour;
    private const double UptakeGPerSPerInsertTray = 3e-3 / SecondsPerHour;
    private const double HalfUptakeGPerM3 = 0.5;
    private const double TransferLnPerK = 0.0237165; // ln 1.024
    private const double UptakeLnPerK = 0.0459290; // ln 1.047
    private const double ReferenceC = 20;

    // The last millimetre is not renewed any faster.
    private const double SmallestDepthM = 1e-3;

    /// <summary>KLa at 20 degrees Celsius, the share of what is missing that dissolves each second.</summary>
    /// <param name="aeratorW">Power that the aerator draws now, W.</param>
    /// <param name="surfaceM2">Free surface, m2.</param>
    /// <param name="depthM">Depth of the water, m.</param>
    public static double TransferAt20PerS(double aeratorW, double surfaceM2, double depthM) =>
        AeratorGPerJ / SaturatedAt20GPerM3 / AeratorDepthM * aeratorW / surfaceM2 + SurfaceMPerS / Math.Max(depthM, SmallestDepthM);

    /// <summary>How many times KLa at 20 degrees Celsius it is at another temperature.</summary>
    public static double TransferGrowth(double celsius) => Math.Exp(TransferLnPerK * (celsius - ReferenceC));

    /// <summary>Oxygen used up at 20 degrees Celsius, g/(m3 s). An integrator may try a little less than no oxygen, and is led
    /// back.</summary>
    /// <param name="insertTraysPerM3">Insert trays for each m3 of the reservoir's normal volume.</param>
    /// <param name="gPerM3">Oxygen in the water, g/m3.</param>
    public static double UptakeAt20GPerM3S(double insertTraysPerM3, double gPerM3) =>
        UptakeGPerSPerInsertTray * insertTraysPerM3 * gPerM3 / (Math.Abs(gPerM3) + HalfUptakeGPerM3);

    /// <summary>How many times what is used up at 20 degrees Celsius it is at another temperature.</summary>
    public static double UptakeGrowth(double celsius) => Math.Exp(UptakeLnPerK * (celsius - ReferenceC));
}
