using CsCheck;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Running;

/// <summary>No water comes from nowhere and none gets lost, and no salts: all stores summed up, less what was brought.</summary>
public sealed class BalanceTests
{
    private const double MillilitreL = 1e-3;
    private const double MilligramG = 1e-3;
    private static readonly Instant start = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Duration year = Duration.FromDays(365);
    private static readonly Site site = FigureSites.Of(1);
    private static readonly RackId rack = new(0);
    private static readonly Duration testLasts = Duration.FromSeconds(25);

    private static readonly Sensor[] floats = [.. site.Sensors.Where(sensor => sensor.Rack == rack && sensor.IsContact)];

    private static readonly string[] latches =
    [
        .. CauseAndEffectTable.At(site).Where(at => at.Row.Effect != RowEffect.Tell)
            .SelectMany(at => at.Stands.Select(stand => $"{stand.Place}/{at.Row.Id}")),
    ];

    // Floods eight times a day with the controller in charge, two hundred random faults of minutes each, leaks and outages among
    // them, and every day somebody who fills the tank, mops the floor, closes breakers, tests the floats and resets what has latched.
    [Fact]
    public void AYearOfFloodsRefillsMopsLeaksAndOutagesBalancesToTheMillilitre() =>
        RandomFaults.Of(site, year, Duration.FromMinutes(10)).Array[200].Sample(
            faults =>
            {
                var events = faults.Select(Fails).Concat(Enumerable.Range(1, 364).SelectMany(Tended)).OrderBy(happening => happening.At);
                var run = new VirtualRun(site, start, [.. events], PlantStart.Default, profile: null);
                var truth = run.Plant.Racks[0];
                var (waterL, saltsG) = (truth.BalanceL, truth.SaltBalanceG);
                run.Begin();
                while (run.Step(MonotonicTime.Zero + year))
                {
                }

                Assert.True(run.Loads.SwitchedOn[site[rack].Pump.Load.Index] > 1000, "the rack is flooded most of the year");
                Assert.Equal(waterL, truth.BalanceL, MillilitreL);
                Assert.Equal(saltsG, truth.SaltBalanceG, MilligramG);
            },
            iter: 1, threads: 1);

    private static ScenarioEvent Fails(Fault fault) => new RackFails(fault.From - MonotonicTime.Zero, "fails", fault);

    private static IEnumerable<ScenarioEvent> Tended(int day)
    {
        var at = Duration.FromDays(day) - Duration.FromHours(5);
        var from = MonotonicTime.Zero + at;
        var fault = new Fault(FaultKind.ReservoirRefilled, from, from + Duration.FromSeconds(1))
        {
            Rack = rack,
            Circuit = new CircuitId(0),
        };
        return
        [
            Fails(fault with { Size = 20 }), Fails(fault with { Kind = FaultKind.FloorMopped }),
            Fails(fault with { Kind = FaultKind.BreakerClosed }),
            .. floats.SelectMany((each, index) => Tested(each, at + index * testLasts)),
            .. latches.SelectMany((latch, index) => Reset(latch, at + floats.Length * testLasts + index * Duration.FromSeconds(20))),
        ];
    }

    // Moved by hand, and let go.
    private static IEnumerable<ScenarioEvent> Tested(Sensor each, Duration at)
    {
        var (harmful, harmless) =
            each.HarmfulValue == 1 ? (FaultKind.MovedWet, FaultKind.MovedDry) : (FaultKind.MovedDry, FaultKind.MovedWet);
        var from = MonotonicTime.Zero + at + Duration.FromSeconds(2);
        return
        [
            new PersonAsks(at, "tests", new BeginProofTest("the grower", each.Name)),
            Fails(new Fault(harmful, from, from + Duration.FromSeconds(5)) { Sensor = each.Id }),
            Fails(new Fault(harmless, from + Duration.FromSeconds(5), from + Duration.FromSeconds(15)) { Sensor = each.Id }),
        ];
    }

    // One latch at a time, in two actions.
    private static IEnumerable<ScenarioEvent> Reset(string latch, Duration at)
    {
        const string By = "the grower";
        return
        [
            new PersonAsks(at, "resets", new ResetLatch(By, latch)),
            new PersonAsks(at + Duration.FromSeconds(10), "confirms", new ConfirmReset(By, latch)),
        ];
    }
}
