using RackController.Control;

namespace RackController.Service.Tests;

public sealed class JournalQueueTests
{
    [Fact]
    public void WhileTheDiskIsBrokenOnlyTheNewestMemoryIsHeld()
    {
        using var queue = new JournalQueue();
        foreach (var number in (int[])[1, 2, 3])
        {
            queue.Add(new JournalEntry([Happenings.Event(number)], Happenings.Memory(("north/latch", number))));
        }

        var taken = queue.TakeEntries();
        Assert.Equal([null, null, null, 3L], taken.Select(entry => entry.Memory?.Items["north/latch"]));

        queue.Add(new JournalEntry([], Happenings.Memory(("north/latch", 4))));
        queue.PutBack(taken);
        queue.Add(new JournalEntry([], Happenings.Memory(("north/latch", 5))));
        taken = queue.TakeEntries();

        Assert.Equal(["number 1", "number 2", "number 3"], taken.SelectMany(entry => entry.Events).Select(each => each.Because));
        Assert.Equal([5L], taken.Where(entry => entry.Memory is not null).Select(entry => entry.Memory!.Items["north/latch"]));
        Assert.Equal(4, taken.Count);
    }

    [Fact]
    public void TheRecordHasRoomForMoreThanADayAndThenIsRefused()
    {
        using var queue = new JournalQueue();
        var page = new PageBytes(Happenings.Event(1).At, new byte[100_000]);
        for (var number = 0; number < 20; number++)
        {
            Assert.True(queue.TryAdd(page));
        }

        Assert.False(queue.TryAdd(page));
        var taken = queue.TakePages();
        Assert.Equal(20, taken.Count);
        Assert.True(queue.TryAdd(page));

        queue.PutBack(taken);
        Assert.False(queue.TryAdd(page));
        Assert.Equal(21, queue.TakePages().Count);
    }

    [Fact]
    public void ManySamplesCallTheWriterAndFewWait()
    {
        using var queue = new JournalQueue();
        var sample = new Sample(Happenings.Noon, "north/reservoir depth", 1);
        queue.Add(sample);
        queue.WakeIfUrgent();
        Assert.False(queue.Wait(TimeSpan.Zero));

        while (!queue.IsFilling)
        {
            queue.Add(sample);
        }

        queue.WakeIfUrgent();
        Assert.True(queue.Wait(TimeSpan.Zero));
        Assert.InRange(queue.TakeSamples().Count, 2, 4_000);
    }
}
