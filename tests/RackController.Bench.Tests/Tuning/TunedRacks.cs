using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Bench.Tests.Tuning;

/// <summary>Racks that really are otherwise than their files say, and the times that a person or their floats would take of them.</summary>
internal static class TunedRacks
{
    public static readonly LocalDate On = new(2026, 11, 30);

    private const double FloatMm = 40;

    public static Rack Demo(string name) => RackFileReader.Read(ShippedFiles.PathTo($"config/{name}.yaml")).Site!.Racks[0];

    /// <summary>The rack as it really is.</summary>
    public static Rack Really(Rack rack, double pump, double standpipe, double[] weeps, double screenLossK = 0) => rack with
    {
        Measured = new MeasuredRack(
            On, 3, new MeasuredFigure(pump, 0), new MeasuredFigure(screenLossK, 0), new MeasuredFigure(standpipe, 0),
            [.. weeps.Select((weep, index) => new MeasuredTier(index + 1, new MeasuredFigure(weep, 0), null))]),
    };

    /// <summary>The same with one branch that stands otherwise.</summary>
    public static Rack WithBranch(Rack really, int tier, double share) => really with
    {
        Measured = really.Measured! with
        {
            Tiers = [.. really.Measured.Tiers.Select(one => one.Number == tier ? one with { Branch = new MeasuredFigure(share, 0) } : one)],
        },
    };

    /// <summary>Full floats on every tier.</summary>
    public static ImmutableArray<FloodMark> Floats(Rack rack) =>
    [
        .. rack.Tiers.SelectMany(tier => (FloodMark[])
        [
            new(tier.Number, FloodPassing.Rising, FloatMm), new(tier.Number, FloodPassing.Falling, FloatMm),
        ]),
    ];

    /// <summary>The rack with a valve on every branch.</summary>
    public static Rack WithValves(Rack rack) => rack with
    {
        Tiers = [.. rack.Tiers.Select(tier => tier with { Valve = new LoadId(100 + tier.Number) })],
    };

    public static FloodRun Run(Rack rack) => new(
        rack.Schedule.Floods.Fill.Limit + rack.Schedule.Floods.Soak, rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2);

    /// <summary>Floods of it, whose times scatter by a second and a hundredth of themselves, normally (Box and Muller).</summary>
    public static ImmutableArray<TimedFlood> Floods(Rack really, int count, Random chance, params int[] resting)
    {
        var run = Run(really) with { Resting = TierSet.Of(resting) };
        ImmutableArray<FloodMark> marks = [.. Floats(really).Where(mark => !resting.Contains(mark.TierNumber))];
        var times = FloodTiming.Of(really, run, marks);
        double Scatter(double seconds) => Math.Sqrt((1 + 1e-4 * seconds * seconds) * -2 * Math.Log(1 - chance.NextDouble()))
            * Math.Cos(2 * Math.PI * chance.NextDouble());
        return
        [
            .. Enumerable.Range(1, count).Select(flood => new TimedFlood(
                $"flood {flood}", run,
                [.. marks.Zip(times, (mark, time) => new TimedPassing(mark, time!.Value + Scatter(time.Value)))])),
        ];
    }
}
