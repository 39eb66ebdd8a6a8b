using System.Collections.Immutable;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench.Tests.Tuning;

public sealed class RackTuningTests
{
    private static readonly Rack two = TunedRacks.Demo("demo-two-tier");
    private static readonly Rack four = TunedRacks.Demo("demo-four-tier");

    // Of 60 intervals of 95 %, fewer than 51 hold what they are of in 2 of 10 000 series (binomial distribution).
    [Fact]
    public void NineteenOfTwentyIntervalsHoldWhatIsSoAndTheFitForetellsTheRackToTwoPercent()
    {
        const int draws = 60;
        var held = new int[3];
        Parallel.For(0, draws, draw =>
        {
            var chance = new Random(draw);
            double Between(double least, double most) => least + (most - least) * chance.NextDouble();
            double[] really = [Between(0.8, 1.05), Between(0.6, 1.2), Between(0.6, 1.2)];
            var rack = TunedRacks.Really(two, really[0], standpipe: 1, really[1..]);

            var tuned = Tuned(two, TunedRacks.Floods(rack, 6, chance));

            foreach (var (figure, value) in tuned.Figures.Where(figure => figure.Figure.Part is TunedPart.Pump or TunedPart.Weep))
            {
                var index = figure.Tier ?? 0;
                Assert.InRange(value.Within, 0, 0.2);
                Interlocked.Add(ref held[index], Math.Abs(value.Value - really[index]) <= value.Within ? 1 : 0);
            }

            AssertForetells(tuned.Rack, rack, 0.02);
        });

        Assert.All(held, count => Assert.InRange(count, 51, draws));
    }

    [Fact]
    public void PumpWeepsAndStandpipesAreFoundAndTheScreenIsNotToldFromThePump()
    {
        var really = TunedRacks.Really(four, 0.87, 0.9, [0.95, 0.7, 0.95, 0.95]);

        var tuned = Tuned(four, TunedRacks.Floods(really, 6, new Random(7)));

        AssertHolds(tuned, new TunedFigure(TunedPart.Pump, null), 0.87);
        AssertHolds(tuned, new TunedFigure(TunedPart.Weep, 2), 0.7);
        AssertHolds(tuned, new TunedFigure(TunedPart.Standpipe, null), 0.9);
        Assert.Contains("the screen cannot be told apart from the pump's speed", tuned.Untold);
        Assert.Null(tuned.Rack.Measured!.ScreenLossK);
        AssertForetells(tuned.Rack, really, 0.02);
    }

    [Fact]
    public void ABranchThatIsThrottledOtherwiseThanWrittenIsFound()
    {
        var really = TunedRacks.WithBranch(TunedRacks.Really(four, 0.9, 1, [1, 1, 1, 1]), 2, 0.8);

        var tuned = Tuned(four, TunedRacks.Floods(really, 6, new Random(3)));

        AssertHolds(tuned, new TunedFigure(TunedPart.Branch, 2), 0.8);
        AssertForetells(tuned.Rack, really, 0.02);
    }

    [Fact]
    public void AClogThatCannotBeToldFromWearIsTheirsTogetherAndForetellsAllTheSame()
    {
        var really = TunedRacks.Really(two, 0.95, 1, [1, 1], screenLossK: 15);

        var tuned = Tuned(two, TunedRacks.Floods(really, 6, new Random(5)));

        Assert.InRange(tuned.Rack.Measured!.PumpSpeed.Value, 0.8, 0.94);
        AssertForetells(tuned.Rack, really, 0.02);
    }

    [Fact]
    public void ATimeThatSomethingElseDecidedIsNamedAndLeftOut()
    {
        var floods = TunedRacks.Floods(TunedRacks.Really(two, 0.9, 1, [1, 1]), 5, new Random(2));
        var odd = floods[3].Times[0] with { AfterS = 2 * floods[3].Times[0].AfterS };

        var tuned = Tuned(two, floods.SetItem(3, floods[3] with { Times = floods[3].Times.SetItem(0, odd) }));

        Assert.StartsWith("flood 4: tier 1 took ", Assert.Single(tuned.LeftOut), StringComparison.Ordinal);
        AssertHolds(tuned, new TunedFigure(TunedPart.Pump, null), 0.9);
    }

    [Fact]
    public void AnEarlierFitIsNotBuiltUpon()
    {
        var floods = TunedRacks.Floods(TunedRacks.Really(two, 0.9, 1, [1, 1]), 3, new Random(4));

        var again = Tuned(TunedRacks.Really(two, 0.5, 1, [0.5, 0.5]), floods);

        Assert.Equal(Tuned(two, floods).Figures.ToArray(), again.Figures.ToArray());
    }

    [Theory]
    [InlineData(1, FloodPassing.Rising, 44.5, 20, "tier 1 cannot have filled in 20 s: the strongest pump that goes with this curve takes ")]
    [InlineData(2, FloodPassing.Falling, 3, 60, "tier 2 cannot have drained in 1 min: with a weep three times as large it takes ")]
    [InlineData(5, FloodPassing.Rising, 44.5, 200, "there is no tier 5 on ")]
    [InlineData(1, FloodPassing.Rising, 80, 200, "tier 1 cannot have filled in 3 min 20 s: by the rack file the water never reaches ")]
    public void NonsenseIsRefusedInALine(int tier, FloodPassing passing, double depthMm, double seconds, string refusal)
    {
        var floods = TunedRacks.Floods(two, 3, new Random(1));
        var nonsense = new TimedPassing(new FloodMark(tier, passing, depthMm), seconds);

        var line = Refused(two, [.. floods.Select(flood => flood with { Times = flood.Times.Add(nonsense) })]);

        Assert.StartsWith(refusal, line, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', line);
    }

    [Fact]
    public void TwoFloodsAreTooFewAndDrainsAloneTellNothingOfThePump()
    {
        var floods = TunedRacks.Floods(two, 3, new Random(1));

        Assert.StartsWith("2 floods with times are too few ", Refused(two, floods[..2]), StringComparison.Ordinal);
        Assert.StartsWith("1 flood with times is too few ", Refused(two, floods[..1]), StringComparison.Ordinal);
        Assert.StartsWith("no fill was timed", Refused(two, Only(floods, FloodPassing.Falling)), StringComparison.Ordinal);
    }

    [Fact]
    public void ATierOutOfUseWasNotTimed()
    {
        var outOfUse = two with { Tiers = [two.Tiers[0], two.Tiers[1] with { InUse = false }] };

        var floods = HandTimes.Floods(outOfUse, [new HandTimes(1, [190, 191, 192]), new HandTimes(2, [200, 201, 202])], []);

        Assert.StartsWith("tier 2 is out of use", Refused(outOfUse, floods), StringComparison.Ordinal);
    }

    // The top tray fills first and the bottom one last: no pump, weep or standpipe turns the order round so far.
    [Fact]
    public void TimesThatNoSuchRackMakesAreRefusedWithTheWorstOfThem()
    {
        var floods = Only(TunedRacks.Floods(two, 3, new Random(1)), FloodPassing.Rising);

        var turned = Refused(two, [.. floods.Select(flood => flood with
        {
            Times = [flood.Times[0] with { AfterS = 7 * flood.Times[0].AfterS }, flood.Times[1]],
        })]);

        Assert.StartsWith("no pump, weeps and standpipes make such times of ", turned, StringComparison.Ordinal);
    }

    private static TunedRack Tuned(Rack rack, ImmutableArray<TimedFlood> floods)
    {
        var outcome = RackTuning.Of(rack, new TuneTimes(floods, TunedRacks.On));
        Assert.Null(outcome.Refusal);
        return outcome.Tuned!;
    }

    private static string Refused(Rack rack, ImmutableArray<TimedFlood> floods)
    {
        var outcome = RackTuning.Of(rack, new TuneTimes(floods, TunedRacks.On));
        Assert.Null(outcome.Tuned);
        return outcome.Refusal!;
    }

    private static ImmutableArray<TimedFlood> Only(ImmutableArray<TimedFlood> floods, FloodPassing passing) =>
        [.. floods.Select(flood => flood with { Times = [.. flood.Times.Where(time => time.Mark.Passing == passing)] })];

    private static void AssertHolds(TunedRack tuned, TunedFigure figure, double really)
    {
        var value = Assert.Single(tuned.Figures, one => one.Figure == figure).Value;
        Assert.InRange(really, value.Value - value.Within, value.Value + value.Within);
    }

    private static void AssertForetells(Rack tuned, Rack really, double share)
    {
        var marks = TunedRacks.Floats(really);
        var run = TunedRacks.Run(really);
        Assert.All(
            FloodTiming.Of(tuned, run, marks).Zip(FloodTiming.Of(really, run, marks)),
            time => Assert.InRange(time.First!.Value / time.Second!.Value, 1 - share, 1 + share));
    }
}
