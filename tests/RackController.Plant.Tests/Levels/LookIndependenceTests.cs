using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class LookIndependenceTests
{
    private const double LengthS = 1500;

    // Metamorphic: the water does not care who looks. The same rack, commands and faults, looked at ten times a second and looked at
    // only when there is news, is in the same state, bit for bit, and every contact changed in the same tenth of a second.
    [Fact]
    public void ARackThatIsLookedAtOftenRunsAsOneThatIsNot() =>
        Gen.Int[1, 5].Select(Gen.Double[30, 500], Gen.Double[0.2, 1], Gen.Int[0, 1 << 20]).Sample((tiers, pumpS, share, draw) =>
        {
            var often = new Observer(tiers, share, draw);
            var seldom = new Observer(tiers, share, draw);
            foreach (var stopS in new[] { Math.Round(pumpS, 1), LengthS })
            {
                often.LookTo(stopS);
                seldom.LeapTo(stopS);
                often.Rack.Stop();
                seldom.Rack.Stop();
            }

            Assert.Equal(often.Changes, seldom.Changes);
            Assert.Equal(often.State(), seldom.State());
        }, iter: 60);

    [Fact]
    public void ARackAtRestHasNoNewsForHours()
    {
        var rack = new TestSite(4);
        rack.To(3600);
        rack.Plant.AdvanceToNews(rack.After(6 * 3600));
        Assert.Equal(7 * 3600, rack.Seconds);
    }

    [Fact]
    public void ASpillThatNoFloatWatchesIsNotLeaptOver()
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with { Drain = new DrainStack(40, 0.1) });
        var rack = new TestSite(1, site: site);
        rack.Flood();
        while (rack.Reading("north/leak rope").Value == 0)
        {
            rack.Plant.AdvanceToNews(rack.After(3600));
        }

        // Two hundredths of a litre wet the rope.
        Assert.Equal(0.02, rack.Truth.SpilledL, 1e-9);
    }

    [Fact]
    public void AWatchedLevelIsNewsOnTheWayUpAndOnTheWayDown()
    {
        var rack = new TestSite(1);
        rack.Plant.Watch(new RackId(0), RackQuantity.TrayDepth, 1, 20);
        rack.Flood();
        Reach(20);
        rack.To(rack.Seconds + 30);
        Assert.True(rack.Truth.Tiers[0].DepthMm > 25);
        rack.Stop();
        Reach(20);

        void Reach(double depthMm)
        {
            for (var looks = 0; Math.Abs(rack.Truth.Tiers[0].DepthMm - depthMm) > 1e-6; looks++)
            {
                Assert.InRange(looks, 0, 20);
                rack.Plant.AdvanceToNews(rack.After(3600));
            }
        }
    }

    // The room is at 20 degrees Celsius, and so is the air, until a light warms it.
    [Fact]
    public void AQuantityThatRestedOnALevelIsNewsOnceItRises()
    {
        var dry = PlantStart.Default with { RoomHumidityPercent = 100 };
        var rack = new TestSite(1, dry);
        rack.Plant.Watch(new RackId(0), RackQuantity.AirTemperature, 1, 20);
        rack.To(100);
        Assert.Equal(20, rack.Truth.Tiers[0].AirTemperatureC);
        rack.Plant.SetRoom(30, 60, rack.After(600));
        rack.Plant.AdvanceToNews(rack.After(300));
        Assert.InRange(rack.Truth.Tiers[0].AirTemperatureC, 20, 20.0001);
        Assert.InRange(rack.Seconds, 100, 110);
    }

    // A scan at that very time sees the level reached; a nanosecond later, the news would come to the scan after it.
    [Fact]
    public void ALevelIsPassedAtTheVeryNanosecondAtWhichAReaderSeesItPassed() => Gen.Int[1, 3000].Sample(tenth =>
    {
        var read = Warming();
        read.Plant.AdvanceTo(MonotonicTime.FromMilliseconds(tenth * 100));
        var levelC = read.Truth.Tiers[0].AirTemperatureC;

        var watched = Warming();
        watched.Plant.Watch(new RackId(0), RackQuantity.AirTemperature, 1, levelC);
        while (watched.Truth.Tiers[0].AirTemperatureC < levelC)
        {
            watched.Plant.AdvanceToNews(watched.After(3600));
        }

        Assert.Equal(read.Now, watched.Plant.Reached);
    });

    private static TestSite Warming()
    {
        var rack = new TestSite(1);
        rack.Plant.SetRoom(30, 60, rack.Now);
        return rack;
    }

    private sealed class Observer
    {
        private readonly Readings before;

        public Observer(int tiers, double share, int draw)
        {
            Rack = new TestSite(tiers, PlantStart.Default with { ReservoirShare = share });
            Rack.Plant.Inject(new Fault(FaultKind.TrayLeak, Rack.After(draw % 400), Rack.After(900 + draw % 400))
            {
                Rack = new RackId(0),
                TierNumber = 1 + draw % tiers,
                Size = draw % 7,
            });
            Rack.Plant.Inject(new Fault(FaultKind.SupplyOutage, Rack.After(draw % 600), Rack.After(610 + draw % 90))
            {
                Circuit = new CircuitId(0),
            });
            before = new Readings(Rack.Site);
            Rack.Plant.Read(Rack.Now, before);
            Rack.Flood();
        }

        public TestSite Rack { get; }

        public List<(SensorId Sensor, long Tenth, double Value)> Changes { get; } = [];

        public void LookTo(double seconds)
        {
            for (var tenth = Tenth() + 1; tenth <= Math.Round(seconds * 10); tenth++)
            {
                Look(tenth);
            }
        }

        public void LeapTo(double seconds)
        {
            var end = MonotonicTime.Zero + Duration.FromSeconds(seconds);
            while (Rack.Now < end)
            {
                Rack.Plant.AdvanceToNews(end);
                Look(Tenth());
            }
        }

        public double[] State() =>
        [
            Rack.Truth.ReservoirVolumeL, Rack.Truth.SpilledL, Rack.Truth.TranspiredL, Rack.Truth.EvaporatedL,
            Rack.Truth.WaterTemperatureC,
            .. Rack.Truth.Tiers.SelectMany(tier => new[] { tier.DepthMm, tier.MediaWaterL, tier.AirTemperatureC }),
        ];

        private long Tenth() => (Rack.Now.Nanoseconds + 99_999_999) / 100_000_000;

        private void Look(long tenth)
        {
            Rack.Plant.Read(MonotonicTime.FromMilliseconds(tenth * 100), Rack.Readings);
            foreach (var sensor in Rack.Site.Sensors.Where(sensor => sensor.IsContact))
            {
                if (Rack.Readings[sensor.Id].Value != before[sensor.Id].Value)
                {
                    Changes.Add((sensor.Id, tenth, Rack.Readings[sensor.Id].Value));
                }
            }

            before.CopyFrom(Rack.Readings);
        }
    }
}
