using CsCheck;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class RackSolutesTests
{
    private const double Hour = 3600;
    private const double Day = 24 * Hour;

    [Fact]
    public void NeitherWaterNorSaltsAreMadeOrLostWhateverGoesWrong() =>
        Gen.Int[1, 5].Select(Gen.Int[0, 1 << 20].Array[16], Gen.Double[0.05, 1.1]).Sample((tiers, draws, share) =>
        {
            var rack = new TestSite(tiers, PlantStart.Default with { ReservoirShare = share, ConductivityMsPerCm = 3 });
            var kinds = FaultCatalogue.Entries.Where(entry => entry.Place is FaultPlace.Rack or FaultPlace.Tier).ToArray();
            var (waterL, saltsG) = (rack.Truth.BalanceL, rack.Truth.SaltBalanceG);
            foreach (var draw in draws)
            {
                var entry = kinds[draw % kinds.Length];
                rack.Plant.Inject(new Fault(entry.Kind, rack.Now, rack.After(draw % 900 + 1))
                {
                    Rack = new RackId(0),
                    TierNumber = 1 + draw % tiers,
                    Size = Math.Min(entry.SizeMax, draw % 97),
                });
                rack.Switch("north/pump", draw % 3 != 0);
                rack.Switch("north/tier 1 light", draw % 2 != 0);
                rack.Switch($"north/tier {1 + draw % tiers} valve", draw % 5 != 0);
                rack.To(rack.Seconds + (draw % 7 == 0 ? Day : draw % 1500));
                Assert.Equal(waterL, rack.Truth.BalanceL, 0.001);
                Assert.Equal(saltsG, rack.Truth.SaltBalanceG, 0.001);
                Assert.True(rack.Truth.ReservoirVolumeL >= -1e-6);
                if (rack.Truth.ReservoirVolumeL > 1)
                {
                    // Water that warms holds more than it should for a while. So does what a slurping pump leaves: up to the oxygen
                    // of the tenth of a litre that it draws from, which is a tenth of what a litre holds.
                    Assert.InRange(rack.Truth.DissolvedOxygenMgPerL, -1e-3, 1.2 * rack.Truth.SaturatedOxygenMgPerL);
                }

                Assert.True(double.IsFinite(rack.Truth.ConductivityMsPerCm));
            }
        }, iter: 60);

    [Fact]
    public void SaltsOfAMonthOfFloodsAddUpToAMilligram()
    {
        var rack = new TestSite(4);
        var before = rack.Truth.SaltBalanceG;
        for (var flood = 0; flood < 30 * 3; flood++)
        {
            rack.To(flood * Day / 3 + 60);
            rack.Flood();
            rack.To(flood * Day / 3 + 660);
            rack.Stop();
        }

        Assert.Equal(before, rack.Truth.SaltBalanceG, 0.001);
        Assert.True(rack.Truth.CropSaltsG > 1);
    }

    [Fact]
    public void AMonthOfEvaporationConcentratesTheSolutionAndTapWaterThinsIt()
    {
        var rack = new TestSite(4, PlantStart.Default with { ConductivityMsPerCm = 1 });
        rack.To(30 * Day);
        var concentrated = rack.Truth.ConductivityMsPerCm;
        Assert.Equal(rack.Truth.ReservoirVolumeL * concentrated, 1.0 * (rack.Truth.ReservoirVolumeL + rack.Truth.EvaporatedL), 1e-6);
        Assert.True(concentrated > 1.005);

        var volume = rack.Truth.ReservoirVolumeL;
        rack.Inject(FaultKind.ReservoirRefilled, 1, fault => fault with { Rack = new RackId(0), Size = 20 });
        Assert.Equal((concentrated * volume + 0.3 * 20) / (volume + 20), rack.Truth.ConductivityMsPerCm, 1e-9);
    }

    [Fact]
    public void WaterTakenAwayTakesItsSaltsAndOxygenWithIt()
    {
        var rack = new TestSite(2);
        var before = (rack.Truth.ConductivityMsPerCm, rack.Truth.DissolvedOxygenMgPerL);
        rack.Inject(FaultKind.ReservoirEmptied, 1, fault => fault with { Rack = new RackId(0), Size = 50 });
        Assert.Equal(before.ConductivityMsPerCm, rack.Truth.ConductivityMsPerCm, 1e-9);
        Assert.Equal(before.DissolvedOxygenMgPerL, rack.Truth.DissolvedOxygenMgPerL, 1e-9);
        Assert.Equal(-50 * 0.64, rack.Truth.BroughtSaltsG, 1e-6);
    }

    [Fact]
    public void ACropThatLeavesSaltsBehindMakesItsMediaStronger()
    {
        var rack = new TestSite(1);
        rack.Switch("north/tier 1 light", on: true);
        rack.To(2 * Day);
        var dried = rack.Truth.Tiers[0].MediaConductivityMsPerCm;
        Assert.True(dried > 1.1);
        rack.Flood();
        rack.To(2 * Day + 900);
        Assert.InRange(rack.Truth.Tiers[0].MediaConductivityMsPerCm, 1, dried);
    }

    [Fact]
    public void WithItsAeratorAReservoirStaysNearSaturationAndWithoutItLosesOxygenForHours()
    {
        var rack = new TestSite(4);
        rack.Switch("north/aerator", on: true);
        rack.To(12 * Hour);
        Assert.InRange(rack.Truth.DissolvedOxygenMgPerL, 0.95 * rack.Truth.SaturatedOxygenMgPerL, rack.Truth.SaturatedOxygenMgPerL);

        rack.Inject(FaultKind.RelayOpen, 2 * Day, fault => fault with { Load = rack.Site.LoadNamed("north/aerator") });
        var hourly = new List<double>();
        for (var hour = 0; hour <= 24; hour++)
        {
            hourly.Add(rack.Truth.DissolvedOxygenMgPerL);
            rack.To(rack.Seconds + Hour);
        }

        Assert.Equal(hourly.OrderDescending(), hourly);
        Assert.InRange(hourly[0] - hourly[1], 0.05, 0.6);
        Assert.True(hourly[24] < 0.8 * hourly[0]);
    }

    [Fact]
    public void FloodsThatFallBackBringOxygenToAReservoirWithoutAnAerator()
    {
        var still = WithoutAerator(floods: false);
        var flooded = WithoutAerator(floods: true);
        Assert.True(flooded > still + 0.5);

        static double WithoutAerator(bool floods)
        {
            var rack = new TestSite(4);
            rack.Switch("north/aerator", on: false);
            for (var hour = 8; hour <= 24 && floods; hour += 8)
            {
                rack.To(hour * Hour);
                rack.Flood();
                rack.To(hour * Hour + 600);
                rack.Stop();
                rack.Switch("north/aerator", on: false);
            }

            rack.To(26 * Hour);
            return rack.Truth.DissolvedOxygenMgPerL;
        }
    }

    [Fact]
    public void APumpThatSlurpsWhatFallsBackToItKeepsSaltsAndOxygenWithinReason()
    {
        // Everything runs through an empty reservoir at once, which a step of the integration must not overshoot.
        var site = Sites.OneRack(2).WithRack(rack => rack with
        {
            Reservoir = rack.Reservoir with { PumpIntakeMm = 0 },
            Tiers = [.. rack.Tiers.Select(tier => tier with { Tray = tier.Tray with { WeepBoreMm = 40 } })],
        });
        var rack = new TestSite(2, PlantStart.Default with { ConductivityMsPerCm = 3 }, site);
        rack.Flood();
        rack.To(120);
        rack.Plant.Inject(new Fault(FaultKind.ReservoirEmptied, rack.Now, MonotonicTime.Never) { Rack = new RackId(0), Size = 1000 });
        for (var second = 121; second < 900; second++)
        {
            rack.To(second);
            Assert.InRange(rack.Truth.ConductivityMsPerCm, 0, 3.5);
            Assert.InRange(rack.Truth.DissolvedOxygenMgPerL, 0, 12);
        }
    }

    [Fact]
    public void ThinAirHoldsLessOxygenInTheWater()
    {
        var high = new TestSite(1, PlantStart.Default with { AltitudeM = 1800 });
        var low = new TestSite(1);
        // In proportion to the pressure nearly: 81.8 of 101.3 kPa at 1800 m, FAO-56 Example 2 as quoted by the library pyet (p. 32).
        Assert.Equal(81.8 / 101.3, high.Truth.SaturatedOxygenMgPerL / low.Truth.SaturatedOxygenMgPerL, 0.005);
    }
}
