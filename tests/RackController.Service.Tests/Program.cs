using RackController.Control;
using RackController.Service;
using RackController.Service.Tests;
using RackController.Testing;

// A process that writes a journal until it is killed, and says after each event whether the journal acknowledged it.
var path = args[0];
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
