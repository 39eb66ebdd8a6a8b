using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Brings a site to a moment as it would come to it if nothing went wrong. It begins two days earlier, so that
/// whatever looks back 24 hours (budgets, rests, the last flood) finds what it looks for.</summary>
internal static class Rehearsal
{
    private const int DaysBefore = 2;

    public static VirtualRun UpTo(Site site, Instant moment)
    {
        var start = moment.InZone(site.Zone).Date.PlusDays(-DaysBefore).AtStartOfDayInZone(site.Zone).ToInstant();
        var run = new VirtualRun(site, start, [], PlantStart.Default, profile: null);
        run.Begin();
        while (run.Step(MonotonicTime.Zero + (moment - start)))
        {
            Invariant.Holds(run.Now.At <= moment, "a rehearsal ends where it was told to");
        }

        return run;
    }
}
