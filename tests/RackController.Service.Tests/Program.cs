using RackController.Control;
using RackController.Growing;
using RackController.Service;
using RackController.Service.Tests;
using RackController.Testing;

// A process that writes a journal or a growing book until it is killed, and says after each entry that it was acknowledged.
var path = args[0];
if (path.EndsWith("book.db", StringComparison.Ordinal))
{
    WriteBook(new BookFile(path));
    return;
}

using var clock = new StillClock();
var alarms = new ControllerAlarms(clock);
using var journal = new Journal(path, JournalOpening.Open(path, Happenings.Noon), Sites.OneRack(), clock, alarms, Happenings.Facts);
journal.Start();
for (var number = 1; number <= 1_000_000; number++)
{
    ControlEvent[] events = [Happenings.Event(number)];
    journal.Happened(events, Happenings.Memory(("pump run", number)));
    journal.GoOn();
    SpinWait.SpinUntil(() => journal.Committed >= number);
    Console.Out.WriteLine(number);
    Console.Out.Flush();
}

static void WriteBook(BookFile book)
{
    for (var number = 1; number <= 1_000_000; number++)
    {
        book.Write(new UpkeepDone(Happenings.Noon, "Ada", "screen", "north", $"number {number}"));
        Console.Out.WriteLine(number);
        Console.Out.Flush();
    }
}
