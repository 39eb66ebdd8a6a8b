namespace RackController.Plant.Tests;

public class TierAirTests
{
    [Fact]
    public void ALightWarmsTheAirAndAFanHoldsItNearTheRoom()
    {
        Assert.Equal(0, TierAir.WarmingKPerS(26, 20, 120, fanRuns: false), 1e-12);
        Assert.Equal(0, TierAir.WarmingKPerS(22.4, 20, 120, fanRuns: true), 1e-12);
        Assert.True(TierAir.WarmingKPerS(19, 20, 0, fanRuns: false) > 0);
    }

    [Fact]
    public void VapourFollowsTheIdealGasLaw()
    {
        // 1 g in 2 m3 at 20 degrees Celsius: e = m R T / V = 0.001 x 461.5 x 293.15 / 2 Pa = 0.067644 kPa. Closed form.
        Assert.Equal(0.067644, TierAir.MoisteningKPaPerS(1.2, 1.2, 20, 0.001, fanRuns: false), 1e-6);
    }

    [Fact]
    public void AirThatIsDamperThanTheRoomDries()
    {
        var still = TierAir.MoisteningKPaPerS(1.6, 1.2, 20, 0, fanRuns: false);
        Assert.True(still < 0);
        Assert.True(TierAir.MoisteningKPaPerS(1.6, 1.2, 20, 0, fanRuns: true) < still);
    }

    [Fact]
    public void OpenWaterGivesAFewMillimetresADayForEachKilopascal()
    {
        // 6.43 / 2.45 = 2.62 mm a day for 1 kPa in still air (closed form of the cited equation).
        Assert.Equal(2.624, OpenWater.EvaporationKgPerM2S(2.3, 1.3, 0) * 86_400, 1e-3);
        Assert.True(OpenWater.EvaporationKgPerM2S(2.3, 1.3, 1) > OpenWater.EvaporationKgPerM2S(2.3, 1.3, 0));
        Assert.Equal(0, OpenWater.EvaporationKgPerM2S(1.2, 1.3, 0));
    }
}
