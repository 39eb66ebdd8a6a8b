using System.Collections.Concurrent;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Foretells what a plan takes, by running each of its days on the simulated racks; days that stand alike are run once.</summary>
public static class PlanForecast
{
    /// <summary>The forecast of a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="site">The racks that it was made for.</param>
    /// <param name="terms">What is assumed.</param>
    public static Forecast Of(Plan plan, Site site, ForecastTerms terms)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(site);
        var first = plan.Request.Today;
        var days = Enumerable.Range(0, Period.DaysBetween(first, plan.Request.Until) + 1)
            .Select(day => PlannedDay.Of(plan, first.PlusDays(day))).ToList();
        var uses = Tried(days.Distinct(), day => DayTrial.Run(day.Set(site, plan.Request.Space), first, terms));
        return Forecast.Of(plan, site, terms, [.. site.Racks.Select(rack => LowestL(site, rack))], [.. days.Select(day => uses[day])]);
    }

    // A reservoir's straight walls: litres for each mm of depth are its area in m2.
    private static double LowestL(Site site, Rack rack) => FloodSurvey.Of(site, rack).LowestWorkingMm * rack.Reservoir.AreaM2;

    // Each day is a world of its own, so all cores can work; what comes of it does not depend on who did what.
    private static ConcurrentDictionary<PlannedDay, DayUse> Tried(IEnumerable<PlannedDay> days, Func<PlannedDay, DayUse> run)
    {
        var left = new ConcurrentQueue<PlannedDay>(days);
        var uses = new ConcurrentDictionary<PlannedDay, DayUse>();
        Workers.Run(() =>
        {
            if (left.TryDequeue(out var day))
            {
                uses[day] = run(day);
                return true;
            }

            return false;
        });
        return uses;
    }
}
