using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class QuietTimeTests
{
    private const double LengthS = 1500;
    private static readonly Duration Tick = Duration.FromMilliseconds(100);

    [Fact]
    public void LeapingSeesEveryContactChangeThatLookingTenTimesASecondSees() =>
        Gen.Int[1, 3].Select(Gen.Double[30, 500], Gen.Double[0.2, 1], Gen.Int[0, 1 << 20]).Sample((tiers, pumpS, share, draw) =>
        {
            var looked = Changes(tiers, pumpS, share, draw, leap: false);
            var leapt = Changes(tiers, pumpS, share, draw, leap: true);
            Assert.Equal(looked.Select(change => change.Sensor), leapt.Select(change => change.Sensor));
            // Where water creeps past a float, two seconds are hundredths of a millimetre.
            Assert.All(looked.Zip(leapt), pair => Assert.Equal(pair.First.AtS, pair.Second.AtS, 2.0));
        }, iter: 10);

    [Fact]
    public void ASpillThatNoFloatWatchesIsNotLeaptOver()
    {
        var site = Sites.OneRack(1).WithRack(rack => rack with { Drain = new DrainStack(40, 0.1) });
        var rope = site.SensorNamed("north/leak rope");
        var rack = new TestSite(1, site: site);
        rack.Flood();
        while (rack.Truth.SpilledL < 0.02)
        {
            rack.Plant.AdvanceTo(rack.Plant.QuietUntil);
        }

        Assert.Equal(1, rack.Reading(site[rope].Name).Value);
        Assert.InRange(rack.Truth.SpilledL, 0.02, 0.1);
    }

    [Fact]
    public void ARackAtRestIsLeftAloneForAMinuteAtATime()
    {
        var rack = new TestSite(4);
        rack.To(3600);
        Assert.Equal(Duration.FromMinutes(1), rack.Plant.QuietUntil - rack.Now);
    }

    private static List<(SensorId Sensor, double AtS)> Changes(int tiers, double pumpS, double share, int draw, bool leap)
    {
        var rack = new TestSite(tiers, PlantStart.Default with { ReservoirShare = share });
        rack.Plant.Inject(new Fault(FaultKind.TrayLeak, rack.After(draw % 400), rack.After(900 + draw % 400))
        {
            Rack = new RackId(0),
            TierNumber = 1 + draw % tiers,
            Size = draw % 7,
        });
        rack.Plant.Inject(new Fault(FaultKind.SupplyOutage, rack.After(draw % 600), rack.After(610 + draw % 90))
        {
            Circuit = new CircuitId(0),
        });
        rack.Flood();
        var stopAt = MonotonicTime.Zero + Duration.FromSeconds(Math.Round(pumpS));
        var changes = new List<(SensorId, double)>();
        var before = new Readings(rack.Site);
        rack.Plant.Read(rack.Now, before);
        while (rack.Seconds < LengthS)
        {
            var next = leap ? MonotonicTime.Earlier(rack.Plant.QuietUntil, rack.Now < stopAt ? stopAt : MonotonicTime.Never) : rack.Now;
            var ticks = Math.Max(next.Nanoseconds, rack.Now.Nanoseconds + 1) / (double)Tick.ToInt64Nanoseconds();
            rack.Plant.Read(MonotonicTime.FromMilliseconds((long)Math.Ceiling(ticks) * 100), rack.Readings);
            if (rack.Now == stopAt)
            {
                rack.Stop();
            }

            foreach (var sensor in rack.Site.Sensors.Where(sensor => rack.Readings[sensor.Id].Value != before[sensor.Id].Value))
            {
                changes.Add((sensor.Id, rack.Seconds));
            }

            before.CopyFrom(rack.Readings);
        }

        return changes;
    }
}
