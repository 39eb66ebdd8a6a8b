using System.Net.Sockets;
using System.Text;
using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests;

/// <summary>Against a real datagram socket, as sd_notify(3) describes it: one assignment per line, READY=1, STOPPING=1,
/// STATUS=, WATCHDOG=1; a name in the abstract namespace begins with an at sign.</summary>
public sealed class SupervisorTests : IDisposable
{
    private static readonly Duration TwoSeconds = Duration.FromSeconds(2);

    private readonly TemporaryFolder folder = new();
    private readonly Socket listener = new(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified) { ReceiveTimeout = 10_000 };

    [Fact]
    public void ReadyStatusAndStoppingArriveAtThePathOfTheSocket()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));

        supervisor.Ready();
        supervisor.Status("4 of 9 loads on");
        supervisor.Stopping();

        Assert.Equal(["READY=1", "STATUS=4 of 9 loads on", "STOPPING=1"], [Receive(), Receive(), Receive()]);
    }

    [Fact]
    public void ANameInTheAbstractNamespaceIsReachedToo()
    {
        var name = $"rackcontroller-test-{Environment.ProcessId}";
        using var supervisor = Listening('\0' + name, '@' + name);

        supervisor.Ready();

        Assert.Equal("READY=1", Receive());
    }

    [Fact]
    public void AStatusStaysOneLine()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));

        supervisor.Status("calm\nREADY=1");

        Assert.Equal("STATUS=calm READY=1", Receive());
    }

    [Fact]
    public void GoodScansFeedTheWatchdogAtLeastTwiceInItsTimeAndNoOftenerThanNeeded()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));

        for (var ms = 1000; ms < 5000; ms += 100)
        {
            supervisor.GoodScan(MonotonicTime.FromMilliseconds(ms));
        }

        Assert.Equal(Enumerable.Repeat("WATCHDOG=1", 6), ReceiveAll());
    }

    [Fact]
    public void NoGoodScanNoSignOfLife()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));

        supervisor.Ready();

        Assert.Equal(["READY=1"], ReceiveAll());
    }

    [Fact]
    public void ASupervisorThatIsGoneIsComplainedOfAndOtherwiseLetGo()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));
        listener.Dispose();

        supervisor.GoodScan(MonotonicTime.FromMilliseconds(1000));

        Assert.NotNull(supervisor.Complaint);
    }

    [Fact]
    public void ASupervisorThatIsBusyForAWhileIsComplainedOfForThatWhile()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));
        while (supervisor.Complaint is null)
        {
            supervisor.Ready();
        }

        ReceiveAll();
        supervisor.Ready();

        Assert.Null(supervisor.Complaint);
    }

    [Fact]
    public void WithoutASupervisorNothingIsSaidAndNothingIsWrong()
    {
        using var supervisor = new Supervisor(null, null);

        supervisor.Ready();
        supervisor.GoodScan(MonotonicTime.FromMilliseconds(1000));

        Assert.False(supervisor.IsPresent);
        Assert.Null(supervisor.Complaint);
    }

    [Fact]
    public void FeedingTheWatchdogAllocatesNothing()
    {
        using var supervisor = Listening(folder.File("notify"), folder.File("notify"));
        supervisor.GoodScan(MonotonicTime.FromMilliseconds(1000));

        var before = GC.GetAllocatedBytesForCurrentThread();
        supervisor.GoodScan(MonotonicTime.FromMilliseconds(3000));

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    public void Dispose()
    {
        listener.Dispose();
        folder.Dispose();
    }

    private Supervisor Listening(string bindTo, string address)
    {
        listener.Bind(new UnixDomainSocketEndPoint(bindTo));
        return new Supervisor(address, TwoSeconds);
    }

    private string Receive()
    {
        var buffer = new byte[1024];
        return Encoding.UTF8.GetString(buffer.AsSpan(0, listener.Receive(buffer)));
    }

    private List<string> ReceiveAll()
    {
        var all = new List<string>();
        while (listener.Available > 0)
        {
            all.Add(Receive());
        }

        return all;
    }
}
