using RackController.Plant;

namespace RackController.Bench.Tests.Figures;

/// <summary>What figures are measured on is what they say it is. The figures themselves are printed, not asserted; what a
/// step allocates is no matter of the machine.</summary>
public class FiguresTests
{
    [Fact]
    public void SixtyFourRacksStandOnSixteenCircuitsThatCarryThem()
    {
        var site = FigureSites.Of(racks: 64);

        Assert.Equal((64, 16), (site.Racks.Length, site.Circuits.Length));
        Assert.All(site.Racks, rack => Assert.Equal(5, rack.Tiers.Length));
        Assert.All(site.Circuits, circuit => Assert.True(
            site.Loads.Where(load => load.Circuit == circuit.Id).Sum(load => load.CurrentA(circuit.VoltageV)) < circuit.ContinuousLimitA));
    }

    [Fact]
    public void AWeekAndADayOfOneRackGoByQuietly()
    {
        var result = ScenarioRun.Run(FigureRuns.OfDays(FigureSites.Of(racks: 1), days: 8));

        Assert.Empty(result.Hazards);
        Assert.Empty(result.Trips);
        Assert.Equal(64, result.Floods.Length);
        Assert.Equal(2, result.Log.Count(entry => entry.Kind is null));
        Assert.All(result.Floods.SelectMany(flood => flood.Trays), tray => Assert.NotNull(tray.Drained));
    }

    [Fact]
    public void AStepOfTheRackAllocatesNothingOnceItIsWarm()
    {
        var cycles = new FloodCycles(FigureSites.Of(racks: 1), PlantStart.Default);
        cycles.Run(3);
        var (steps, bytes) = (cycles.Steps, GC.GetAllocatedBytesForCurrentThread());
        cycles.Run(3);

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - bytes);
        Assert.True(cycles.Steps - steps > 100);
    }

    [Fact]
    public void AFinerToleranceTakesMoreStepsAndErrsLess()
    {
        var byTolerance = FloodAccuracy.AtSeveralTolerances(FigureSites.Of(racks: 1)).OrderByDescending(each => each.ToleranceMm).ToList();

        Assert.All(byTolerance.Zip(byTolerance.Skip(1)), pair =>
        {
            Assert.True(pair.First.Steps <= pair.Second.Steps);
            Assert.True(pair.First.WorstMm >= pair.Second.WorstMm);
        });
        Assert.True(byTolerance.Single(each => each.IsDefault).WorstMm < 0.1);
    }

    [Fact]
    public void ASteadyScanOfSixtyFourRacksAllocatesNothing()
    {
        var racks = new SteadyRack(FigureSites.Of(racks: 64));
        racks.ScanMoving();
        var bytes = GC.GetAllocatedBytesForCurrentThread();
        for (var scan = 0; scan < 100; scan++)
        {
            racks.ScanMoving();
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - bytes);
    }
}
