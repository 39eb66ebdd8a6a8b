using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class SimulatedSiteTests
{
    [Fact]
    public void AFloodFillsEveryTrayToItsStandpipeAndDrainsAgain()
    {
        var rack = new TestSite(4);
        rack.Flood();
        rack.To(600);
        Assert.All(rack.Truth.Tiers, tier => Assert.InRange(tier.DepthMm, 44, 60));

        rack.Stop();
        rack.To(2400);
        Assert.All(rack.Truth.Tiers, tier => Assert.InRange(tier.DepthMm, 0, 0.5));
        Assert.Equal(0, rack.Truth.SpilledL);
        Assert.True(rack.Truth.PumpedL > 4 * 30);
    }

    [Fact]
    public void WaterThatATierValveShutsOutDoesNotReachItsTray()
    {
        var rack = new TestSite(3);
        rack.Flood();
        rack.Switch("north/tier 2 valve", on: false);
        rack.To(300);
        Assert.Equal(0, rack.Truth.Tiers[1].DepthMm);
        Assert.True(rack.Truth.Tiers[2].DepthMm > 30);
    }

    [Fact]
    public void APumpWithoutWaterRunsDryAndLiftsNothing()
    {
        var rack = new TestSite(2, PlantStart.Default with { ReservoirShare = 0.05 });
        rack.Flood();
        rack.To(60);
        Assert.True(rack.Truth.PumpRunsDry);
        Assert.Equal(0, rack.Truth.PumpFlowLpm, 1e-9);
        rack.Stop();
        rack.To(61);
        Assert.False(rack.Truth.PumpRunsDry);
    }

    [Fact]
    public void ATrayWhoseDrainsAreOverwhelmedRunsOntoTheFloorAndWetsTheRope()
    {
        var rack = new TestSite(1, site: Sites.OneRack(1).WithRack(rack => rack with { Drain = new DrainStack(40, 2) }));
        rack.Flood();
        rack.To(900);
        Assert.True(rack.Truth.SpilledL > 1);
        Assert.Equal(1, rack.Reading("north/leak rope").Value);
        Assert.Equal(1, rack.Reading("north/tier 1 high float").Value);
        rack.Stop();
        rack.To(1200);
        rack.Inject(FaultKind.FloorMopped, 1, fault => fault with { Rack = new RackId(0) });
        rack.To(1201);
        Assert.Equal(0, rack.Reading("north/leak rope").Value);
        Assert.True(rack.Truth.SpilledL > 1);
    }

    [Fact]
    public void WithoutACheckValveACoveredOutletDrainsBackThroughThePump()
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with
        {
            Supply = rack.Supply with { HasCheckValve = false },
            Tiers = [rack.Tiers[0] with { Branch = rack.Tiers[0].Branch with { OutletAboveTrayFloorMm = 5 } }],
        });
        var rack = new TestSite(1, site: site);
        rack.Flood();
        rack.To(400);
        rack.Switch("north/pump", on: false);
        rack.To(401);
        Assert.True(rack.Truth.PumpFlowLpm < -1);
        rack.Switch("north/tier 1 valve", on: false);
        rack.To(402);
        Assert.Equal(0, rack.Truth.PumpFlowLpm, 1e-6);
    }

    [Fact]
    public void LightAddsUpToItsDailyIntegral()
    {
        // 200 umol/m2/s for 16 h: 11.52 mol/m2, arithmetic of the definition DLI = PPFD x h x 3600 / 1e6.
        var rack = new TestSite(1, site: Sites.OneRack(1).WithRack(rack => rack with
        {
            Tiers = [rack.Tiers[0] with { PpfdUmolPerM2S = 200 }],
        }));
        rack.Switch("north/tier 1 light", on: true);
        rack.To(16 * 3600);
        rack.Switch("north/tier 1 light", on: false);
        rack.To(24 * 3600);
        Assert.Equal(11.52, rack.Truth.Tiers[0].LightIntegralMolPerM2, 1e-9);
    }

    [Fact]
    public void TheSameCommandsAndTimesGiveTheSameReadingsBitForBit()
    {
        Assert.Equal(Trace(), Trace());

        static List<double> Trace()
        {
            var rack = new TestSite(3);
            rack.Flood();
            var values = new List<double>();
            for (var second = 1; second < 900; second += 7)
            {
                rack.To(second);
                values.AddRange(rack.Truth.Tiers.Select(tier => tier.DepthMm));
                values.Add(rack.Truth.ReservoirLevelMm);
            }

            return values;
        }
    }

    [Fact]
    public void LeapingAndSteppingEveryTenthOfASecondAgree()
    {
        var leap = new TestSite(3);
        var step = new TestSite(3);
        leap.Flood();
        step.Flood();
        for (var second = 60; second <= 1200; second += 60)
        {
            leap.To(second);
            while (step.Seconds < second)
            {
                step.To(step.Seconds + 0.1);
            }

            for (var tier = 0; tier < 3; tier++)
            {
                Assert.Equal(leap.Truth.Tiers[tier].DepthMm, step.Truth.Tiers[tier].DepthMm, 0.1);
            }

            if (second == 600)
            {
                leap.Stop();
                step.Stop();
            }
        }
    }

    [Fact]
    public void AStepAllocatesNothing()
    {
        var rack = new TestSite(5);
        rack.Flood();
        rack.Plant.Inject(new Fault(FaultKind.FloatChattering, rack.Now, MonotonicTime.Never)
        {
            Sensor = rack.Site.SensorNamed("north/tier 1 high float"),
            Size = 1,
        });
        Work(50);

        var before = GC.GetAllocatedBytesForCurrentThread();
        Work(1000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Work(int steps)
        {
            for (var step = 0; step < steps; step++)
            {
                rack.Plant.AdvanceToNews(rack.Now + NodaTime.Duration.FromSeconds(1));
                rack.Plant.Read(rack.Now, rack.Readings);
                rack.Plant.Write(rack.Now, rack.Commands);
            }
        }
    }
}
