using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>The demo rack of two tiers with a full float on each, fitted, and floods that it might have had.</summary>
internal static class FittedSite
{
    public static readonly Site Site = Fitted();

    public static readonly Rack Rack = Site.Racks[0];

    /// <summary>What its fit foretells of a flood as the schedule runs it: of each tier, when it is full and when it is empty.</summary>
    public static readonly ImmutableArray<(double FullS, double EmptyS)> Foretold = Foretell();

    /// <summary>Floods every six hours from noon of the day after the fit, each tier so much slower than foretold.</summary>
    public static IEnumerable<FloodRecord> Floods(int count, double[] fillFactors, double[] drainFactors) =>
        Enumerable.Range(0, count).Select(flood => new FloodRecord(
            Happenings.Noon + Duration.FromHours(6) * flood, "", Rack.Schedule.Floods.Fill.Limit, Rack.Schedule.Floods.Soak, null, null,
            [
                .. Foretold.Select((tier, index) => new TierFlood(
                    index + 1, Duration.FromSeconds(fillFactors[index] * tier.FullS),
                    Duration.FromSeconds(drainFactors[index] * tier.EmptyS))),
            ]));

    private static Site Fitted()
    {
        var site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-two-tier.yaml")).Site!;
        var like = site.Sensors.First(sensor => sensor.Kind == SensorKind.ReservoirLowFloat);
        var fitted = site with
        {
            Sensors =
            [
                .. site.Sensors,
                .. site.Racks[0].Tiers.Select((tier, index) => like with
                {
                    Id = new SensorId(site.Sensors.Length + index),
                    Name = $"full {tier.Number}",
                    Kind = SensorKind.TrayFullFloat,
                    TierNumber = tier.Number,
                    HeightMm = 40,
                }),
            ],
        };
        return fitted.WithRack(rack => rack with
        {
            Measured = new MeasuredRack(
                new LocalDate(2026, 5, 31), 6, new MeasuredFigure(0.9, 0.01), null, null,
                [new MeasuredTier(1, new MeasuredFigure(0.9, 0.02), null), new MeasuredTier(2, new MeasuredFigure(1.1, 0.02), null)]),
        });
    }

    private static ImmutableArray<(double FullS, double EmptyS)> Foretell()
    {
        var floods = Rack.Schedule.Floods;
        var run = new FloodRun(floods.Fill.Limit + floods.Soak, Rack.Reservoir.NormalVolumeL / Rack.Reservoir.AreaM2);
        return
        [
            .. Rack.Tiers.Select(tier => FloodTiming.Of(
                    Rack, run,
                    [new FloodMark(tier.Number, FloodPassing.Rising, 40), new FloodMark(tier.Number, FloodPassing.Falling, 40)]))
                .Select(times => (times[0]!.Value, times[1]!.Value)),
        ];
    }
}
