using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Running;

public class EventLogTests
{
    [Fact]
    public void ALogOfYearsKeepsTheNewestAndCountsTheRest()
    {
        var log = new EventLog();
        var counts = new EventCounts(Sites.OneRack());
        log.Forgets = counts.Forget;
        const int Trips = 3 * EventLog.MostEntries;
        for (var trip = 0; trip < Trips; trip++)
        {
            log.Begin(Duration.FromSeconds(trip), Instant.FromUtc(2026, 1, 1, 0, 0) + Duration.FromSeconds(trip));
            log.Take(new ControlEvent(
                new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 1, 1, 0, 0), true), EventKind.Interlock, "north/low-float", "acts",
                $"trip {trip}"));
        }

        Assert.True(log.Entries.Count <= EventLog.MostEntries);
        Assert.Equal($"trip {Trips - 1}", log.Entries[^1].Because);
        Assert.Equal(Trips, log.Entries.Count + counts.Earlier.Count);
        foreach (var entry in log.Entries)
        {
            counts.Count(entry);
        }

        Assert.Equal(new Tally("north/low-float", Trips), Assert.Single(counts.Trips));
        Assert.Empty(counts.Alarms);
    }
}
