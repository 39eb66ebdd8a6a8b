namespace RackController.Plant;

/// <summary>
/// The temperature of a rack's water, wherever it is: warmed by the submerged pump, which turns all it draws into heat, cooled by what
/// evaporates, and following the room through the reservoir's walls and the tiers' air through flooded trays. The coefficients are
/// assumptions of ours, common practice, no source.
/// </summary>
internal static class WaterWarmth
{
    /// <summary>Heat that a flooded tray exchanges with its air for each square metre, W/(m2 K).</summary>
    public const double TrayWPerM2K = 10;

    private const double ReservoirLossWPerK = 8;
    private const double BoilsAtC = 100;
    private const double FadesOverK = 10;
    private const double WaterKgPerM3 = 1000;

    // An emptied tank still has walls: a litre of water keeps it from changing at once.
    private const double SmallestM3 = 1e-3;

    /// <summary>Heat of a pump that warms water of a temperature, W: less and less over the last ten kelvins below boiling, where a
    /// motor's own cut-out has long acted and no equation here holds.</summary>
    /// <param name="pumpW">What the pump draws, W.</param>
    /// <param name="waterC">Temperature of the water.</param>
    public static double FromPumpW(double pumpW, double waterC) => pumpW * Math.Clamp((BoilsAtC - waterC) / FadesOverK, 0, 1);

    /// <summary>What the room gives the water through the reservoir's walls, W.</summary>
    /// <param name="roomC">Temperature of the room.</param>
    /// <param name="waterC">Temperature of the water.</param>
    public static double FromRoomW(double roomC, double waterC) => ReservoirLossWPerK * (roomC - waterC);

    /// <summary>How fast it warms, K/s.</summary>
    /// <param name="heatW">All heat that it takes up, W.</param>
    /// <param name="volumeM3">All free water, m3.</param>
    public static double WarmingKPerS(double heatW, double volumeM3) =>
        heatW / (Physics.WaterHeatCapacityJPerKgK * WaterKgPerM3 * Math.Max(volumeM3, SmallestM3));
}
