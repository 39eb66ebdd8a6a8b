using System.Net.Sockets;
using System.Text;

namespace RackController.Service.Tests;

/// <summary>In the words of sd_notify(3), version 252: EXTEND_TIMEOUT_USEC= puts off the time-out of a start, and WATCHDOG=1 that of the
/// watchdog where a run takes over from another within the same process.</summary>
public sealed class SlowStartTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly Socket listener = new(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified) { ReceiveTimeout = 10_000 };

    [Fact]
    public void WhileItLastsTheSupervisorIsAskedForTimeAndThenNoMore()
    {
        listener.Bind(new UnixDomainSocketEndPoint(folder.File("notify")));
        using var supervisor = new Supervisor(folder.File("notify"), null);

        using (new SlowStart(supervisor, TimeSpan.FromMilliseconds(1), atMost: 3))
        {
            for (var ask = 0; ask < 3; ask++)
            {
                var asked = Receive().Split('\n');
                Assert.Contains("WATCHDOG=1", asked);
                Assert.Contains(asked, line => line.StartsWith("EXTEND_TIMEOUT_USEC=", StringComparison.Ordinal));
            }
        }

        supervisor.Ready();
        Assert.Equal("READY=1", Receive());
    }

    public void Dispose()
    {
        listener.Dispose();
        folder.Dispose();
    }

    private string Receive()
    {
        var buffer = new byte[512];
        return Encoding.UTF8.GetString(buffer, 0, listener.Receive(buffer));
    }
}
