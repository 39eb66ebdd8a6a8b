using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Trips and alarms of a site on which nothing fails, every sensor scattering as its data sheet lets it.</summary>
/// <param name="RackYears">Rack-years that were run.</param>
/// <param name="Trips">What acted although nothing was wrong, and how often.</param>
/// <param name="Alarms">What was told although nothing was wrong, and how often.</param>
public sealed record QuietYears(double RackYears, ImmutableArray<Tally> Trips, ImmutableArray<Tally> Alarms)
{
    private const int DaysPerYear = 365;
    private const int DaysPerRun = 5;

    /// <summary>False trips in a rack-year; 0 where no year was run.</summary>
    public double TripsPerRackYear => RackYears > 0 ? Trips.Sum(trip => trip.Count) / RackYears : 0;

    /// <summary>Runs them, in pieces of some days, each with a scatter of its own.</summary>
    /// <param name="plan">The campaign.</param>
    /// <param name="stop">Ends it early.</param>
    internal static QuietYears Run(CampaignPlan plan, CancellationToken stop)
    {
        var pieces = (plan.Options.QuietYears * DaysPerYear + DaysPerRun - 1) / DaysPerRun;
        var counts = new EventCounts?[pieces];
        var next = -1;
        Workers.Run(() =>
        {
            var index = Interlocked.Increment(ref next);
            if (index >= pieces || stop.IsCancellationRequested)
            {
                return false;
            }

            counts[index] = RunPiece(plan, SplitMix64.Of(plan.Options.Seed, $"quiet days {index + 1}").Next());
            return true;
        });
        var done = counts.OfType<EventCounts>().ToList();
        return new QuietYears(
            (double)done.Count * DaysPerRun * plan.Site.Racks.Length / DaysPerYear,
            Sum(done.Select(one => one.Trips)), Sum(done.Select(one => one.Alarms)));
    }

    private static EventCounts RunPiece(CampaignPlan plan, ulong seed)
    {
        var site = plan.Site;
        var length = Duration.FromDays(DaysPerRun);
        var noise = site.Sensors.Where(sensor => SensorScatter.Of(sensor.Kind) is not null).Select(sensor => (ScenarioEvent)new RackFails(
            Duration.Zero, $"scatter of {sensor.Name}",
            new Fault(FaultKind.SensorNoise, MonotonicTime.Zero, MonotonicTime.Never)
            {
                Sensor = sensor.Id,
                Size = SensorScatter.Of(sensor.Kind)!.StandardDeviation,
            }));
        var run = new VirtualRun(site, plan.Days.From, [.. noise], PlantStart.Default with { Seed = seed }, profile: null)
        {
            Visitor = new Refiller(site),
        };
        run.Begin();
        while (run.Step(MonotonicTime.Zero + length))
        {
            Invariant.Holds(run.Control is not null, "nothing takes the board's power on a quiet day");
        }

        var counts = new EventCounts(site);
        foreach (var entry in run.Log.Entries.Where(entry => entry.Kind is EventKind.Interlock or EventKind.Alarm))
        {
            counts.Count(entry);
        }

        return counts;
    }

    private static ImmutableArray<Tally> Sum(IEnumerable<ImmutableArray<Tally>> tallies) =>
    [
        .. tallies.SelectMany(list => list).GroupBy(tally => tally.Subject)
            .Select(same => new Tally(same.Key, same.Sum(tally => tally.Count))).OrderByDescending(tally => tally.Count),
    ];
}
