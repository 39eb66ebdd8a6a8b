using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class JournalTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly TemporaryFolder folder = new();
    private readonly StillClock clock = new();
    private readonly ControllerAlarms alarms;

    public JournalTests() => alarms = new ControllerAlarms(clock);

    private string Path => folder.File("journal.db");

    [Fact]
    public void WhatWasHandedOverIsWrittenInOrderBeforeTheEnd()
    {
        using var journal = Open(Path);
        journal.Start();
        for (var number = 1; number <= 300; number++)
        {
            journal.Happened([Happenings.Event(number)], Happenings.Memory(("runs", number)));
        }

        Assert.True(journal.Stop(Patience));

        Assert.Equal(Enumerable.Range(1, 300).Select(number => $"number {number}"), JournalReader.Events(Path));
        Assert.Equal(["300"], JournalReader.Column(Path, "SELECT value FROM memory"));
    }

    [Fact]
    public void ASignOfLifeKeepsTheTimeAtWhichTheControllerWasLastAlive()
    {
        using var journal = Open(Path);
        journal.Start();
        var later = Happenings.Memory(("age", 5)) with { SavedAt = Happenings.Noon + Duration.FromMinutes(3) };
        journal.StillAlive(later, isUrgent: false);

        Assert.True(journal.Stop(Patience));

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;
        Assert.Equal(later.SavedAt, opening.LastTrustedTime);
    }

    [Fact]
    public void ASignOfLifeThatMayWaitIsTakenOnlyWithTheRestAndAnUrgentOneAtOnce()
    {
        using var queue = new JournalQueue();

        queue.Add(Happenings.Memory(("age", 1)), isUrgent: false);
        Assert.Null(queue.TakeSignOfLife(onlyUrgent: true));
        queue.Add(Happenings.Memory(("age", 2)), isUrgent: true);
        Assert.Equal(2, queue.TakeSignOfLife(onlyUrgent: true)?.Items["age"]);
        queue.Add(Happenings.Memory(("age", 3)), isUrgent: false);
        Assert.Equal(3, queue.TakeSignOfLife(onlyUrgent: false)?.Items["age"]);
    }

    [Fact]
    public void TheWriterIsWokenOnceTheRelaysWereToldAndNotBefore()
    {
        using var queue = new JournalQueue();
        queue.WakeIfUrgent();
        Assert.False(queue.Wait(TimeSpan.Zero));

        queue.Add(Happenings.Memory(("age", 1)), isUrgent: false);
        queue.WakeIfUrgent();
        Assert.False(queue.Wait(TimeSpan.Zero));

        queue.Add(new JournalEntry([Happenings.Event(1)], null));
        Assert.False(queue.Wait(TimeSpan.Zero));
        queue.WakeIfUrgent();
        Assert.True(queue.Wait(TimeSpan.Zero));
    }

    [Fact]
    public void ContactsAreSampledWhenTheyChangeAndMeasuredValuesOnceAMinute()
    {
        var site = Sites.OneRack();
        site = site with
        {
            Sensors = site.Sensors.SetItem(1, site.Sensors[1] with { Name = "north/air", Kind = SensorKind.AirTemperature }),
        };
        using var journal = new Journal(Path, JournalOpening.Open(Path, Happenings.Noon), site, clock, alarms, Happenings.Facts);
        journal.Start();
        var readings = new Readings(site);
        for (var second = 0; second < 120; second++)
        {
            readings[new SensorId(0)] = new Reading(second < 30 ? 1 : 0, ReadingQuality.Good, clock.Now().Monotonic);
            readings[new SensorId(1)] = new Reading(20, ReadingQuality.Good, clock.Now().Monotonic);
            journal.Sampled(clock.Now(), readings);
            clock.Advance(Duration.FromSeconds(1));
        }

        Assert.True(journal.Stop(Patience));

        Assert.Equal(["2"], SampleCount("north/reservoir low float"));
        Assert.Equal(["2"], SampleCount("north/air"));
    }

    [Fact]
    public void AJournalWhoseFolderCannotBeMadeIsAnAlarmAndNothingIsLostOnceItCan()
    {
        var inTheWay = folder.File("later");
        File.WriteAllText(inTheWay, "");
        var path = System.IO.Path.Combine(inTheWay, "journal.db");
        using var journal = Open(path);
        journal.Start();
        journal.Happened([Happenings.Event(1)], null);
        WaitFor(() => alarms.Active().Any(alarm => alarm.Key == "controller/journal"));

        File.Delete(inTheWay);
        journal.Happened([Happenings.Event(2)], null);
        WaitFor(() => journal.Committed == 2);

        Assert.True(journal.Stop(Patience));
        Assert.Equal(["number 1", "number 2"], JournalReader.Events(path));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, Assert.Single(alarms.Active()).State);
    }

    /// <summary>A real full disk: a file system in memory of 256 KiB.</summary>
    [FullDiskFact]
    public void AFullDiskHoldsUpNobodyAndIsWrittenOnceThereIsRoom()
    {
        using var disk = new TinyDisk(folder.Path, kibibytes: 256);
        var path = System.IO.Path.Combine(disk.Path, "journal.db");
        using var journal = Open(path);
        journal.Start();
        var ballast = disk.Fill();

        for (var number = 1; number <= 50; number++)
        {
            journal.Happened([Happenings.Event(number)], null);
        }

        WaitFor(() => alarms.Active().Any(alarm => alarm.Key == "controller/journal"));
        File.Delete(ballast);
        journal.Happened([Happenings.Event(51)], null);
        WaitFor(() => journal.Committed == 51);

        Assert.True(journal.Stop(Patience));
        Assert.Equal(Enumerable.Range(1, 51).Select(number => $"number {number}"), JournalReader.Events(path));
    }

    public void Dispose()
    {
        clock.Dispose();
        folder.Dispose();
    }

    private List<string> SampleCount(string sensor) => JournalReader.Column(
        Path, $"SELECT count(*) FROM samples JOIN sensors ON sensors.id = samples.sensor WHERE name = '{sensor}'");

    private Journal Open(string path) =>
        new(path, JournalOpening.Open(path, Happenings.Noon), Sites.OneRack(), clock, alarms, Happenings.Facts);

    /// <summary>Waits for another thread; the limit only keeps a broken test from waiting for ever.</summary>
    private static void WaitFor(Func<bool> condition) =>
        Assert.True(SpinWait.SpinUntil(condition, Patience), "it did not come about");
}
