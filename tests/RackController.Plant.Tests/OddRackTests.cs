using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>Racks as odd as a rack file allows, switched at random while everything goes wrong: the plant stays sane and gets on.</summary>
public class OddRackTests
{
    private static readonly Duration length = Duration.FromMinutes(30);

    private static Gen<OddRun> Odd { get; } =
        from site in RandomSites.Any
        from start in RandomStarts.Any
        from faults in RandomFaults.Of(site, length, longest: length).Array[0, 8]
        from draw in Gen.Int[0, 1 << 20]
        select new OddRun(site, start, faults, draw);

    [Fact]
    public void NothingTurnsNegativeOrWithoutEndAndNoWaterIsMadeOrLost() =>
        Odd.Sample(StaysSaneAndKeepsItsWater, threads: 1, print: odd => odd.Words);

    // It holds a column without a flow, by a curve that leaves its shut-off head upright: once that had no end.
    [Fact]
    public void AWeakPumpThatIsSwitchedAtRandomStaysSaneToo() =>
        Odd.Sample(StaysSaneAndKeepsItsWater, seed: "8AOSq7EiMUb1", iter: 1, threads: 1, print: odd => odd.Words);

    // A reservoir as narrow as a finger that drains as fast as it is emptied comes to some twelve a second, each a level passed.
    [Fact]
    public void NewsIsNeverEndless() => Odd.Sample(
        odd =>
        {
            var plant = odd.Begin();
            var news = 0;
            var still = 0;
            odd.Switch(plant, time =>
            {
                while (plant.Reached < time)
                {
                    var before = plant.Reached;
                    plant.AdvanceToNews(time);
                    still = plant.Reached == before ? still + 1 : 0;

                    // A tray that settles to its rim from above touches that level some times in one nanosecond.
                    Assert.InRange(still, 0, 5);
                    news++;
                }
            });
            Assert.InRange(news, 0, 100 * length.TotalSeconds);
        },
        threads: 1, print: odd => odd.Words);

    // Most take some hundreds in an hour with two floods; a reservoir of a litre that is slurped dry takes hundreds of
    // thousands: one each 10 ms, the shortest that there is.
    [Fact]
    public void NoRackTakesStepsWithoutEnd() => Odd.Sample(
        odd =>
        {
            var electrics = new SiteElectrics(odd.Site, PlantStart.Default with { Breakers = BreakerEdge.Slow });
            var rack = new SimulatedRack(odd.Site.Racks[0], electrics.Loads, odd.Start);
            for (var quarter = 1; quarter <= 4; quarter++)
            {
                foreach (var load in electrics.Loads)
                {
                    load.Commanded = quarter % 2 == 1 || load.Load.Kind == LoadKind.Valve;
                }

                electrics.Settle();
                rack.Take();
                rack.Dynamics.AdvanceTo(MonotonicTime.FromMilliseconds(900_000L * quarter));
                electrics.Now = rack.Dynamics.Now;
            }

            Assert.InRange(rack.Dynamics.Steps, 0, 361_000);
        },
        threads: 1, print: odd => odd.Words);

    private static void StaysSaneAndKeepsItsWater(OddRun odd)
    {
        var plant = odd.Begin();
        var balanceL = plant.Racks.Select(rack => rack.BalanceL).ToArray();
        var saltsG = plant.Racks.Select(rack => rack.SaltBalanceG).ToArray();
        odd.Switch(plant, time =>
        {
            plant.AdvanceTo(time);
            Assert.All(plant.Racks, IsSane);
        });
        Assert.All(plant.Racks.Zip(balanceL), pair => Assert.Equal(pair.Second, pair.First.BalanceL, 1e-6));
        Assert.All(plant.Racks.Zip(saltsG), pair => Assert.Equal(pair.Second, pair.First.SaltBalanceG, 1e-6));
    }

    private static void IsSane(RackTruth rack)
    {
        // A step may leave a film of a thousandth of a millimetre too much or too little.
        Assert.InRange(rack.ReservoirVolumeL, -0.01, 10_000);
        Assert.InRange(rack.PumpFlowLpm, -1e4, 1e4);
        Assert.InRange(rack.WaterTemperatureC, -20, 110);

        // What is dissolved in a film is known no better than the film.
        Assert.True(rack.ReservoirVolumeL < 1 || rack.DissolvedOxygenMgPerL is > -0.1 and < 100);
        Assert.True(rack.ReservoirVolumeL < 1 || rack.ConductivityMsPerCm > -0.1);
        Assert.All(rack.Tiers, tier =>
        {
            Assert.InRange(tier.VolumeL, -0.01, 10_000);
            Assert.InRange(tier.MediaWaterL, -0.01, 100);
            Assert.InRange(tier.AirTemperatureC, -20, 200);
            Assert.InRange(tier.AirHumidityPercent, 0, 100);
        });
    }

    private sealed record OddRun(Site Site, PlantStart Start, Fault[] Faults, int Draw)
    {
        public string Words => $"{Start}\n{string.Join("\n", (IEnumerable<Fault>)Faults)}\n{SiteWords.Of(Site)}";

        public SimulatedSite Begin()
        {
            var plant = new SimulatedSite(Site, Start);
            foreach (var fault in Faults)
            {
                plant.Inject(fault);
            }

            return plant;
        }

        /// <summary>Switches loads at random each minute, and lets something be done with the minutes.</summary>
        public void Switch(SimulatedSite plant, Action<MonotonicTime> until)
        {
            var commands = new RelayCommands(Site);
            for (var minute = 0; minute < length.TotalMinutes; minute++)
            {
                foreach (var load in Site.Loads)
                {
                    var isOn = ((Draw >> ((minute + load.Id.Index) % 20)) & 1) == 0;
                    commands[load.Id] = isOn ? SwitchState.On : SwitchState.Off;
                }

                plant.Write(MonotonicTime.FromMilliseconds(60_000 * minute), commands);
                until(MonotonicTime.FromMilliseconds(60_000 * (minute + 1)));
            }
        }
    }
}
