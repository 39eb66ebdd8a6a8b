using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class RackClimateTests
{
    private const double Hour = 3600;

    [Fact]
    public void ALitCropMoistensItsAirAndAFanDriesIt()
    {
        var rack = Lit(fan: false);
        var still = rack.Truth.Tiers[0];
        var humid = still.AirHumidityPercent;
        Assert.True(Vapour(still) > Vapour(rack.Truth.Tiers[1]) + 0.05);

        var fanned = Lit(fan: true).Truth.Tiers[0];
        Assert.True(Vapour(fanned) < Vapour(still));
        Assert.InRange(humid, 30, 90);
    }

    [Fact]
    public void WhatTheCropGivesOffIsWhatTheMediaLose()
    {
        var rack = Lit(fan: true);
        var tier = rack.Truth.Tiers[0];
        var before = (tier.MediaWaterL, rack.Truth.TranspiredL);
        var mlPerH = tier.TranspirationMlPerH;
        rack.To(rack.Seconds + Hour);
        Assert.Equal(mlPerH, (before.MediaWaterL - tier.MediaWaterL) * 1000, 0.02 * mlPerH);
        Assert.True(rack.Truth.TranspiredL > before.TranspiredL);
        // Some mm a day on half a square metre; common practice, no source.
        Assert.InRange(mlPerH, 10, 100);
    }

    [Fact]
    public void LeavesThatDrinkUnderLightStayCoolerThanDryOnes()
    {
        var rack = Lit(fan: true);
        var drinking = rack.Truth.Tiers[0].CanopyTemperatureC - rack.Truth.Tiers[0].AirTemperatureC;
        rack.To(rack.Seconds + 20 * 24 * Hour);
        var tier = rack.Truth.Tiers[0];
        Assert.True(tier.MediaWaterL < 0.5);
        Assert.True(tier.CanopyTemperatureC - tier.AirTemperatureC > drinking + 0.5);
        Assert.True(tier.LeafVapourDeficitKPa > tier.VapourDeficitKPa);
    }

    [Fact]
    public void TheHeatOfATierAddsUp()
    {
        // At rest what the light brings leaves as vapour, 2.45 MJ/kg, and to the room, 50 W/K under a fan; the water takes none from a
        // drained tray.
        var rack = Lit(fan: true);
        var tier = rack.Truth.Tiers[0];
        var vapourW = tier.TranspirationMlPerH / Hour / 1000 * 2.45e6;
        var lightW = rack.Site[rack.Site.LoadNamed("north/tier 1 light")].PowerW;
        Assert.Equal(lightW, vapourW + 50 * (tier.AirTemperatureC - rack.Truth.RoomTemperatureC), 0.3);
    }

    [Fact]
    public void TheHeatOfTheWaterAddsUp()
    {
        // At rest what evaporates, 2.45 MJ/kg, comes from the room through the reservoir's walls, 8 W/K.
        var rack = new TestSite(2, PlantStart.Default with { CropFactor = 0 });
        rack.To(20 * 24 * Hour);
        var before = rack.Truth.EvaporatedL;
        rack.To(rack.Seconds + 24 * Hour);
        var vapourW = (rack.Truth.EvaporatedL - before) / (24 * Hour) * 2.45e6;
        Assert.True(vapourW > 1);
        Assert.Equal(vapourW, 8 * (rack.Truth.RoomTemperatureC - rack.Truth.WaterTemperatureC), 0.05 * vapourW);
    }

    [Fact]
    public void TheRoomGoesEvenlyToWhereItIsSent()
    {
        var rack = new TestSite(2, PlantStart.Default with { RoomC = 18, RoomHumidityPercent = 60 });
        rack.Plant.SetRoom(24, 40, rack.After(8 * Hour));
        rack.To(4 * Hour);
        Assert.Equal(21, rack.Truth.RoomTemperatureC, 1e-9);
        rack.To(8 * Hour);
        Assert.Equal(24, rack.Truth.RoomTemperatureC, 1e-9);
        Assert.Equal(40, rack.Truth.RoomHumidityPercent, 1e-6);
        rack.To(12 * Hour);
        Assert.Equal(24, rack.Truth.RoomTemperatureC, 1e-9);
        Assert.Equal(24, rack.Truth.Tiers[0].AirTemperatureC, 1.0);

        rack.Plant.SetRoom(30, 50, rack.Now);
        Assert.Equal(30, rack.Truth.RoomTemperatureC, 1e-9);
        Assert.Equal(50, rack.Truth.RoomHumidityPercent, 1e-9);
    }

    [Fact]
    public void ARoomOnItsWayIsTheSameHoweverOftenSomebodyLooks()
    {
        var leap = Sent();
        var step = Sent();
        leap.To(2 * Hour);
        while (step.Seconds < 2 * Hour)
        {
            step.To(step.Seconds + 13);
        }

        leap.To(3 * Hour);
        step.To(3 * Hour);
        Assert.Equal(leap.Truth.Tiers[0].AirTemperatureC, step.Truth.Tiers[0].AirTemperatureC);
        Assert.Equal(leap.Truth.DissolvedOxygenMgPerL, step.Truth.DissolvedOxygenMgPerL);

        static TestSite Sent()
        {
            var rack = new TestSite(2);
            rack.Switch("north/tier 1 light", on: true);
            rack.Plant.SetRoom(26, 40, rack.After(5400));
            return rack;
        }
    }

    [Fact]
    public void TopUpWaterMixesItsWarmthIn()
    {
        var rack = new TestSite(1, PlantStart.Default with { WaterC = 16, RoomC = 22 });
        var volume = rack.Truth.ReservoirVolumeL;
        rack.Inject(FaultKind.ReservoirRefilled, 1, fault => fault with { Rack = new RackId(0), Size = 10 });
        Assert.Equal((16 * volume + 22 * 10) / (volume + 10), rack.Truth.WaterTemperatureC, 1e-9);
    }

    private static TestSite Lit(bool fan)
    {
        var rack = new TestSite(2);
        rack.Switch("north/fan", fan);
        rack.Switch("north/tier 1 light", on: true);
        rack.To(6 * Hour);
        return rack;
    }

    private static double Vapour(TierTruth tier) =>
        HumidAir.SaturationKPa(tier.AirTemperatureC) * tier.AirHumidityPercent / 100;
}
