using System.Net.Sockets;
using RackController.Testing;
using Serilog.Core;

namespace RackController.Service.Tests;

public sealed class HousekeeperTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly TemporaryFolder folder = new();
    private readonly StillClock clock = new();
    private readonly ControllerAlarms alarms;
    private readonly GoodScans goodScans = new();

    public HousekeeperTests() => alarms = new ControllerAlarms(clock);

    [Fact]
    public void ADiskThatCannotTellItsRoomIsAnAlarm()
    {
        using var supervisor = new Supervisor(null, null);
        using var journal = Journal();
        using var housekeeper = Housekeeper(supervisor, journal, new StateFolder(folder.File("not/there")));

        Keep(housekeeper, until: "controller/disk-space");
    }

    [Fact]
    public void ALockFileThatVanishesIsAnAlarm()
    {
        File.WriteAllText(folder.File("lock"), "");
        using var supervisor = new Supervisor(null, null);
        using var journal = Journal();
        using var housekeeper = Housekeeper(supervisor, journal, new StateFolder(folder.Path));
        File.Delete(folder.File("lock"));

        Keep(housekeeper, until: "controller/lock");
    }

    [Fact]
    public void ASupervisorThatCannotBeToldIsAnAlarm()
    {
        var address = folder.File("notify");
        using (var listener = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified))
        {
            listener.Bind(new UnixDomainSocketEndPoint(address));
            using var supervisor = new Supervisor(address, null);
            listener.Dispose();
            supervisor.Ready();
            using var journal = Journal();
            using var housekeeper = Housekeeper(supervisor, journal, new StateFolder(folder.Path));

            Keep(housekeeper, until: "controller/supervisor");
        }
    }

    [Fact]
    public void ASupervisorThatCannotBeReachedAtTheStartIsAnAlarm()
    {
        using var supervisor = new Supervisor(folder.File("nobody"), null);
        using var journal = Journal();
        using var housekeeper = Housekeeper(supervisor, journal, new StateFolder(folder.Path));

        Keep(housekeeper, until: "controller/supervisor");
    }

    public void Dispose()
    {
        clock.Dispose();
        folder.Dispose();
    }

    private Journal Journal()
    {
        var path = folder.File("journal.db");
        return new Journal(path, JournalOpening.Open(path, Happenings.Noon), Sites.OneRack(), clock, alarms, Happenings.Facts);
    }

    [Fact]
    public void ScansThatAreGoodAreASignOfLifeAndOthersAreNot()
    {
        var state = new StateFolder(folder.Path);
        using var journal = Journal();
        using var supervisor = new Supervisor(null, null);
        using (var without = Housekeeper(supervisor, journal, state))
        {
            without.Start();
            Assert.True(without.Stop(Patience));
        }

        Assert.False(SignOfLife.At(state.Alive).IsFresh);

        goodScans.GoodScan(default);
        using var housekeeper = Housekeeper(supervisor, journal, state);
        housekeeper.Start();
        Assert.True(housekeeper.Stop(Patience));

        Assert.True(SignOfLife.At(state.Alive).IsFresh);
    }

    private Housekeeper Housekeeper(Supervisor supervisor, Journal journal, StateFolder state) => new(
        Logger.None, new EventLog(Logger.None), new StatusBoard(alarms, new RecentEvents(), new DueUpkeep()), supervisor,
        new HostIsTrusted(), alarms, state, journal, goodScans,
        new UpkeepWatch(Sites.OneRack(), state, clock, alarms));

    private void Keep(Housekeeper housekeeper, string until)
    {
        housekeeper.Start();
        Assert.True(SpinWait.SpinUntil(() => alarms.Active().Any(alarm => alarm.Key == until), Patience));
        Assert.True(housekeeper.Stop(Patience));
    }
}
