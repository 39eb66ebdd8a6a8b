using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>The runs that figures are measured on: nothing goes wrong, and once a week somebody changes the solution.</summary>
public static class FigureRuns
{
    /// <summary>A scenario of so many days, from the first of January on.</summary>
    /// <param name="site">The site.</param>
    /// <param name="days">How many, from 1.</param>
    public static Scenario OfDays(Site site, int days)
    {
        ArgumentNullException.ThrowIfNull(site);
        return new Scenario
        {
            Name = $"{days} quiet days",
            About = "Nothing goes wrong, and every week the solution is changed.",
            File = "built in",
            RackFile = "built in",
            Site = site,
            Start = Instant.FromUtc(2026, 1, 1, 0, 0),
            Length = Duration.FromDays(days),
            Events = [.. Enumerable.Range(1, (days - 1) / 7).SelectMany(week => site.Racks.SelectMany(rack => Change(rack, week)))],
            Expectations = [],
            Accepts = [],
        };
    }

    // Between floods: what is there goes, and as much as the rack's normal volume comes.
    private static ImmutableArray<ScenarioEvent> Change(Rack rack, int week)
    {
        var at = Duration.FromDays(7 * week) + Duration.FromMinutes(90);
        RackFails Happening(FaultKind kind, double sizeL) => new(
            at, "the solution is changed",
            new Fault(kind, MonotonicTime.Zero + at, MonotonicTime.Never) { Rack = rack.Id, Size = sizeL });
        return
        [
            Happening(FaultKind.ReservoirEmptied, rack.Reservoir.CapacityL),
            Happening(FaultKind.ReservoirRefilled, rack.Reservoir.NormalVolumeL),
        ];
    }
}
