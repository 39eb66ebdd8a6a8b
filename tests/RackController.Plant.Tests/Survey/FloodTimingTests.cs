using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests.Survey;

public sealed class FloodTimingTests
{
    private static readonly Site site = Sites.OneRack();
    private static readonly Rack rack = site.Racks[0];
    private static readonly FloodRun run = new(
        rack.Schedule.Floods.Fill.Limit + rack.Schedule.Floods.Soak, rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2);

    [Fact]
    public void TheTimesAreThoseOfTheSurveyAtItsMarks()
    {
        var survey = FloodSurvey.Of(site, rack);
        Assert.All(survey.Tiers, tier =>
        {
            var times = Of(
                rack, new FloodMark(tier.Tier.Number, FloodPassing.Rising, tier.Tier.Tray.FilledMm),
                new FloodMark(tier.Tier.Number, FloodPassing.Falling, FloodTray.DrainedBelowMm));
            Assert.Equal(tier.Filled!.Value.TotalSeconds, times[0]!.Value, 0.2);
            Assert.Equal(tier.Drained!.Value.TotalSeconds, times[1]!.Value, 0.2);
        });
    }

    // Torricelli: below the standpipe only the weep drains, so half of it takes twice as long from one depth to another.
    [Fact]
    public void HalfAWeepDrainsFromOneDepthToAnotherInTwiceTheTime()
    {
        var halved = Measured(measured => measured with { Tiers = [new MeasuredTier(1, new MeasuredFigure(0.5, 0), null)] });

        Assert.Equal(2, SecondsBetween(halved, 1) / SecondsBetween(rack, 1), 0.01);
        Assert.Equal(1, SecondsBetween(halved, 2) / SecondsBetween(rack, 2), 0.01);
    }

    // What is measured is what its words say: a slower pump, a coefficient more before the riser, four times the loss at half the flow.
    [Fact]
    public void AMeasuredRackIsTheRackWhosePartsAreSo()
    {
        Assert.Equal(
            Fills(rack with { Pump = rack.Pump with { Curve = rack.Pump.Curve.AtSpeed(0.9) } }),
            Fills(Measured(measured => measured with { PumpSpeed = new MeasuredFigure(0.9, 0) })));
        Assert.Equal(
            Fills(rack with { Supply = rack.Supply with { RunMinorLossK = rack.Supply.RunMinorLossK + 12 } }),
            Fills(Measured(measured => measured with { ScreenLossK = new MeasuredFigure(12, 0) })));
        var throttled = rack.Tiers[0] with { Branch = rack.Tiers[0].Branch with { MinorLossK = 4 * rack.Tiers[0].Branch.MinorLossK } };
        Assert.Equal(
            Fills(rack with { Tiers = rack.Tiers.SetItem(0, throttled) }),
            Fills(Measured(measured => measured with { Tiers = [new MeasuredTier(1, null, new MeasuredFigure(0.5, 0))] })));
    }

    [Fact]
    public void AMarkThatTheWaterDoesNotReachIsPassedNeitherWay() => Assert.All(
        Of(rack, new FloodMark(1, FloodPassing.Rising, 84), new FloodMark(1, FloodPassing.Falling, 84)), time => Assert.Null(time));

    // The top tier is the last on the riser: with its valve shut, the others stand on a riser that ends below it.
    [Fact]
    public void ATierAtRestGetsNoWaterAndTheOthersFillAsIfItWereNotThere()
    {
        var valves = rack with { Tiers = [.. rack.Tiers.Select(tier => tier with { Valve = new LoadId(100 + tier.Number) })] };
        var top = rack.Tiers.Length;
        ImmutableArray<FloodMark> marks = [.. rack.Tiers.Select(tier => new FloodMark(tier.Number, FloodPassing.Rising, 40))];

        var times = FloodTiming.Of(valves, run with { Resting = TierSet.Of([top]) }, marks);

        Assert.Null(times[^1]);
        var without = FloodTiming.Of(rack with { Tiers = rack.Tiers.RemoveAt(top - 1) }, run, marks.RemoveAt(top - 1));
        Assert.All(times.SkipLast(1).Zip(without), time => Assert.Equal(time.Second!.Value, time.First!.Value, 0.1));
    }

    [Fact]
    public void WithoutAValveATierIsFloodedThoughItRests()
    {
        var valveless = rack with { Tiers = [.. rack.Tiers.Select(tier => tier with { Valve = null })] };

        Assert.NotNull(FloodTiming.Of(valveless, run with { Resting = TierSet.Of([1]) }, [new FloodMark(1, FloodPassing.Rising, 40)])[0]);
    }

    private static Rack Measured(Func<MeasuredRack, MeasuredRack> change) => rack with
    {
        Measured = change(new MeasuredRack(new LocalDate(2026, 11, 30), 3, new MeasuredFigure(1, 0), null, null, [])),
    };

    private static double SecondsBetween(Rack like, int tier)
    {
        var times = Of(like, new FloodMark(tier, FloodPassing.Falling, 35), new FloodMark(tier, FloodPassing.Falling, 5));
        return times[1]!.Value - times[0]!.Value;
    }

    private static double?[] Fills(Rack like) =>
        [.. Of(like, [.. rack.Tiers.Select(tier => new FloodMark(tier.Number, FloodPassing.Rising, 40))])];

    private static ImmutableArray<double?> Of(Rack like, params ImmutableArray<FloodMark> marks) => FloodTiming.Of(like, run, marks);
}
