using System.Collections.Immutable;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench.Tests.Tuning;

/// <summary>Floods in which some tiers take no part: the others move the pump along its curve, where a clog, whose loss goes with the
/// square of the flow, and wear, which lowers the curve, no longer look alike.</summary>
public sealed class RestingTiersTests
{
    private static readonly Rack two = TunedRacks.WithValves(TunedRacks.Demo("demo-two-tier"));
    private static readonly Rack four = TunedRacks.WithValves(TunedRacks.Demo("demo-four-tier"));

    // Of 60 intervals of 95 %, fewer than 51 hold what they are of in 2 of 10 000 series (binomial distribution).
    [Fact]
    public void NineteenOfTwentyIntervalsOfPumpAndScreenHoldWhatIsSo()
    {
        const int draws = 60;
        var held = new int[2];
        Parallel.For(0, draws, draw =>
        {
            var chance = new Random(draw);
            double Between(double least, double most) => least + (most - least) * chance.NextDouble();
            double[] really = [Between(0.85, 1.05), Between(20, 60)];
            var rack = TunedRacks.Really(two, really[0], 1, [Between(0.8, 1.1), Between(0.8, 1.1)], really[1]);

            var tuned = Tuned(two, Floods(rack, chance, [], [1], [2]));

            Assert.Empty(tuned.LeftOut);
            Count(tuned, TunedPart.Pump, really[0], 0.1, ref held[0]);
            Count(tuned, TunedPart.Screen, really[1], 20, ref held[1]);
        });

        Assert.All(held, count => Assert.InRange(count, 51, draws));
    }

    [Fact]
    public void WhatIsTunedSoForetellsFloodsWithOtherTiersAtRest()
    {
        var really = TunedRacks.Really(four, 0.95, 1, [0.9, 1, 1.05, 0.95], screenLossK: 25);

        var tuned = Tuned(four, Floods(really, new Random(8), [], [1, 2], [1, 2, 3]));

        var run = TunedRacks.Run(four) with { Resting = TierSet.Of([2, 4]) };
        ImmutableArray<FloodMark> marks = [.. TunedRacks.Floats(four).Where(mark => mark.TierNumber is 1 or 3)];
        Assert.All(
            FloodTiming.Of(tuned.Rack, run, marks).Zip(FloodTiming.Of(really, run, marks)),
            time => Assert.InRange(time.First!.Value / time.Second!.Value, 0.98, 1.02));
    }

    [Fact]
    public void TimesOfFloodsWithOtherTiersAtRestAreToldApart()
    {
        var tuned = Tuned(two, Floods(TunedRacks.Really(two, 0.95, 1, [1, 1]), new Random(1), [], [2]));

        Assert.Equal(
            ["tier 2: drains to 40 mm", "tier 2: fills to 40 mm", "tier 1: drains to 40 mm, tier 2 shut", "tier 1: drains to 40 mm",
                "tier 1: fills to 40 mm, tier 2 shut", "tier 1: fills to 40 mm"],
            TunedWords.Of(tuned, ShownUnits.Metric, null).Times.Select(row => $"{row[0]}: {row[1]}"));
        Assert.True(Fill(TierSet.Of([2])).MeasuredS < Fill(TierSet.None).MeasuredS);

        TunedTime Fill(TierSet resting) => tuned.Times.Single(time =>
            time.Mark is { TierNumber: 1, Passing: FloodPassing.Rising } && time.Resting == resting);
    }

    // Times without any scatter make nobody surer than times can be known.
    [Fact]
    public void AScreenThatIsNoMoreThanItsIntervalIsNone()
    {
        var really = TunedRacks.Really(four, 0.93, 1, [0.95, 1.05, 1, 0.9]);
        TimedFlood Exactly(params int[] resting)
        {
            var run = TunedRacks.Run(four) with { Resting = TierSet.Of(resting) };
            ImmutableArray<FloodMark> marks = [.. TunedRacks.Floats(four).Where(mark => !resting.Contains(mark.TierNumber))];
            var times = FloodTiming.Of(really, run, marks);
            return new TimedFlood("", run, [.. marks.Zip(times, (mark, time) => new TimedPassing(mark, time!.Value))]);
        }

        var tuned = Tuned(four, [Exactly(), Exactly(), Exactly(1, 2)]);

        Assert.Null(tuned.Rack.Measured!.ScreenLossK);
        Assert.Contains("the screen is as clean as these times can tell", tuned.Untold);
        Assert.Equal(0.93, tuned.Rack.Measured.PumpSpeed.Value, 0.005);
    }

    [Fact]
    public void ATierThatTookNoPartWasNotTimed()
    {
        var floods = TunedRacks.Floods(two, 3, new Random(1));

        var outcome = RackTuning.Of(
            two,
            new TuneTimes([.. floods.Select(flood => flood with { Run = flood.Run with { Resting = TierSet.Of([2]) } })], TunedRacks.On));

        Assert.StartsWith("tier 2 is out of use", outcome.Refusal, StringComparison.Ordinal);
    }

    private static void Count(TunedRack tuned, TunedPart part, double really, double mostWithin, ref int held)
    {
        var value = Assert.Single(tuned.Figures, figure => figure.Figure.Part == part).Value;
        Assert.InRange(value.Within, 0, mostWithin);
        Interlocked.Add(ref held, Math.Abs(value.Value - really) <= value.Within ? 1 : 0);
    }

    private static ImmutableArray<TimedFlood> Floods(Rack really, Random chance, params int[][] resting) =>
        [.. resting.SelectMany(which => TunedRacks.Floods(really, 5, chance, which))];

    private static TunedRack Tuned(Rack rack, ImmutableArray<TimedFlood> floods)
    {
        var outcome = RackTuning.Of(rack, new TuneTimes(floods, TunedRacks.On));
        Assert.Null(outcome.Refusal);
        return outcome.Tuned!;
    }
}
