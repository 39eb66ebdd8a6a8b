using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

public class SteadyScanTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);

    [Theory]
    [InlineData(-30, true)]
    [InlineData(2, true)]
    [InlineData(7, true)]
    [InlineData(15, true)]
    [InlineData(-30, false)]
    public void AScanAtWhichNothingChangesAllocatesNothing(int minutes, bool trusted)
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Runs =
            [
                schedule.Runs[0],
                new RunInCycles(schedule.Runs[1].Load, Duration.FromMinutes(15), Duration.FromMinutes(45)),
            ],
        });
        var rig = new DemandRig(site, Seven - Duration.FromHours(1));
        rig.RunUntil(Seven + Duration.FromMinutes(minutes));
        rig.Trust(trusted);
        rig.Demand.TrySkipNext(rig.Now, rig, out _);
        rig.Run(Duration.FromSeconds(1));
        var demands = rig.Demands.ToArray();
        var agenda = new Agenda();
        agenda.Begin(rig.Now);

        // The runtime may compile anew what is called often, and allocate for that once.
        long Allocated()
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            for (var scan = 0; scan < 1000; scan++)
            {
                rig.Demand.Update(rig.Facts, demands, agenda, rig);
            }

            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Assert.Equal(0, Math.Min(Allocated(), Allocated()));
    }
}
