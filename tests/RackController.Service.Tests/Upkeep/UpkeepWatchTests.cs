using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class UpkeepWatchTests : IDisposable
{
    private static readonly TimeSpan patience = TimeSpan.FromSeconds(20);

    // Never due but by its screen, so that a test is about one work.
    private static readonly Site site = OnlyScreen(Sites.OneRack());

    private readonly TemporaryFolder folder = new();
    private readonly StillClock clock = new();
    private readonly ControllerAlarms alarms;
    private readonly BookDesk book;
    private readonly UpkeepWatch watch;

    public UpkeepWatchTests()
    {
        alarms = new ControllerAlarms(clock);
        book = new BookDesk(folder.File("book.db"), site);
        watch = new UpkeepWatch(site, new StateFolder(folder.Path), clock, alarms);
    }

    [Fact]
    public void WhatIsOverdueIsAnAlarmUntilItIsPutDownAsDone()
    {
        using var journal = Used(floods: 13);
        Wait(() => alarms.Active().Length > 0);

        var alarm = Assert.Single(alarms.Active());
        Assert.Equal(("controller/upkeep", AlarmPriority.Low), (alarm.Key, alarm.Priority));
        Assert.StartsWith("overdue on north: rinse the screen (13 of 10 floods, since the record", alarm.Cause, StringComparison.Ordinal);
        Assert.Equal(UpkeepWork.Screen, Assert.Single(watch.Due.Works).Work);

        Assert.Null(new UpkeepDesk(site, book).Done(site.Racks[0], UpkeepWork.Screen, "", "Ada", clock.Now()));
        Wait(() => alarms.Active().All(one => one.State == AlarmState.ReturnedUnacknowledged));
        Assert.Empty(watch.Due.Works);
    }

    [Fact]
    public void WhatIsMerelyDueWaitsInTheListAndCallsNobody()
    {
        using var journal = Used(floods: 11);
        Wait(() => watch.Due.Works.Length > 0);

        Assert.Empty(alarms.Active());
    }

    [Fact]
    public void ABookThatCannotBeReadIsTold()
    {
        using var journal = Used(floods: 0);
        File.WriteAllText(folder.File("book.db"), new string('x', 4096));
        Wait(() => alarms.Active().Length > 0);

        Assert.StartsWith("what was done cannot be read", Assert.Single(alarms.Active()).Cause, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutAJournalItIsTriedAgainAndNobodyIsCalled()
    {
        watch.Follow();
        watch.Follow();
        Assert.Empty(alarms.Active());

        using var journal = Used(floods: 11);
        Wait(() => watch.Due.Works.Length > 0);
    }

    // A reading leaves nothing beside the book that would look like an entry of somebody else.
    [Fact]
    public void ABookThatNobodyWritesIsTheSameBook()
    {
        Assert.Null(new UpkeepDesk(site, book).Done(site.Racks[0], UpkeepWork.Screen, "", "Ada", clock.Now()));
        var seen = book.Look();

        new BookDesk(folder.File("book.db"), site).Look();
        Assert.Same(seen, book.Look());
    }

    public void Dispose()
    {
        clock.Dispose();
        folder.Dispose();
    }

    private static Site OnlyScreen(Site of) => of with
    {
        Racks =
        [
            .. of.Racks.Select(rack => rack with
            {
                Upkeep =
                [
                    .. Enum.GetValues<UpkeepWork>().Select(work => new UpkeepRule(
                        work, work == UpkeepWork.Screen ? new UpkeepInterval(10, null, null) : null)),
                ],
            }),
        ],
    };

    private MadeUpJournal Used(int floods)
    {
        var journal = new MadeUpJournal(folder.File("journal.db"));
        var now = clock.Now().Wall;
        journal.Add(MadeUpJournal.Event(now - Duration.FromDays(2), EventKind.Controller, site.Name, "started"));
        for (var flood = floods; flood > 0; flood--)
        {
            journal.Add(MadeUpJournal.Event(now - Duration.FromHours(flood), EventKind.Flood, "north", FloodEvent.Filling));
        }

        return journal;
    }

    private void Wait(Func<bool> isSo) => Assert.True(SpinWait.SpinUntil(
        () =>
        {
            watch.Follow();
            return isSo();
        },
        patience));
}
