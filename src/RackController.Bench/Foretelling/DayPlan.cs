using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What every load of a site will do on a local day if nothing goes wrong. It is no second reading of the
/// schedule: the controller itself is run against the simulated rack, from two days before.</summary>
/// <param name="Day">The day.</param>
/// <param name="Loads">What each load does, by load.</param>
public sealed record DayPlan(LocalDay Day, ImmutableArray<LoadDay> Loads)
{
    private static readonly Duration checkLasts = Duration.FromSeconds(10);

    /// <summary>Foretells a day.</summary>
    /// <param name="site">The site.</param>
    /// <param name="date">The local date.</param>
    public static DayPlan Of(Site site, LocalDate date)
    {
        var day = new LocalDay(site, date);
        var run = Rehearsal.UpTo(site, day.Start);
        var origin = run.Now.At - run.Now.Elapsed;
        var timeline = new LoadTimeline(site);
        var end = MonotonicTime.Zero + (day.End - origin);
        do
        {
            foreach (var load in site.Loads)
            {
                timeline.Note(load.Id, run.Now.IsTold(load.Id), run.Now.Elapsed);
            }
        }
        while (run.Step(end));

        timeline.Close(run.Now.Elapsed);
        return new DayPlan(day, [.. site.Loads.Select(load => LoadDay(load, timeline, origin))]);
    }

    private static LoadDay LoadDay(Load load, LoadTimeline timeline, Instant origin) => new(
        load.Id,
        [
            .. WithoutChecks(timeline.Of(load.Id)).Where(stretch => stretch.Until > stretch.From)
                .Select(stretch => new Interval(origin + stretch.From, origin + stretch.Until)),
        ]);

    // A load that is switched off for a moment to see whether it is alive is on all the same, for whoever plans a day.
    private static List<PoweredStretch> WithoutChecks(IReadOnlyList<PoweredStretch> stretches)
    {
        var whole = new List<PoweredStretch>();
        foreach (var stretch in stretches)
        {
            if (whole.Count > 0 && stretch.From - whole[^1].Until <= checkLasts)
            {
                whole[^1] = whole[^1] with { Until = stretch.Until };
            }
            else
            {
                whole.Add(stretch);
            }
        }

        return whole;
    }
}

/// <summary>What one load does on a day.</summary>
/// <param name="Load">The load.</param>
/// <param name="On">When it is told to be on, cut off at the day's ends; a moment off to check that it is alive is left out.</param>
public sealed record LoadDay(LoadId Load, ImmutableArray<Interval> On)
{
    /// <summary>How long it is on.</summary>
    public Duration Total => On.Aggregate(Duration.Zero, (sum, stretch) => sum + stretch.Duration);
}
