using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class DriftWatchTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly ControllerAlarms alarms = new(new StillClock());

    public void Dispose() => folder.Dispose();

    [Fact]
    public void ARackThatDrainsSlowerThanItsFitRaisesAnAlarmThatSaysWhereToLookAndClearsWhenItDoesNot()
    {
        using var journal = new MadeUpJournal(folder.File("journal.db"));
        Add(journal, FittedSite.Floods(10, [1, 1], [1, 1.5]));
        Look(journal, days: 4);

        var alarm = Assert.Single(alarms.Active());
        Assert.Equal(("controller/drift", AlarmPriority.Low), (alarm.Key, alarm.Priority));
        Assert.StartsWith(
            $"{FittedSite.Rack.Name}: Tier 2 drains 50 % slower than it was fitted to on 2026-05-31 ", alarm.Cause,
            StringComparison.Ordinal);
        Assert.EndsWith("look for roots and media in its weep and standpipe", alarm.Cause, StringComparison.Ordinal);

        Add(journal, FittedSite.Floods(10, [1, 1], [1, 1]).Select(flood => flood with { At = flood.At + Duration.FromDays(4) }));
        Look(journal, days: 8);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, Assert.Single(alarms.Active()).State);
    }

    private void Look(MadeUpJournal journal, int days)
    {
        using var history = journal.Read();
        new DriftWatch(FittedSite.Site, alarms).Look(history, Happenings.Noon + Duration.FromDays(days));
    }

    private static void Add(MadeUpJournal journal, IEnumerable<FloodRecord> floods)
    {
        foreach (var flood in floods)
        {
            var (soaking, draining) = (flood.At + flood.Fill!.Value, flood.At + flood.Fill.Value + flood.Soak!.Value);
            journal.Add(
                Event(flood.At, FloodEvent.Filling), Event(soaking, FloodEvent.Soaking), Event(draining, FloodEvent.Draining),
                Event(draining + Duration.FromMinutes(20), FloodEvent.Drained));
            journal.Add([.. flood.Tiers.SelectMany(tier => (Sample[])
                [
                    new(flood.At + tier.FullAfter!.Value, $"full {tier.Number}", 1),
                    new(draining + tier.EmptyAfter!.Value, $"full {tier.Number}", 0),
                ]).OrderBy(sample => sample.Wall)]);
        }
    }

    private static ControlEvent Event(Instant at, string what) => MadeUpJournal.Event(at, EventKind.Flood, FittedSite.Rack.Name, what);
}
