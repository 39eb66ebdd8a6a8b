using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;

namespace RackController.Crash;

/// <summary>
/// What a supervisor hears of a process, by the datagrams of <c>sd_notify(3)</c>: that it is ready, and in its status line how many
/// events it vouches for. That number is the acknowledgment: whoever was told it may rely on it.
/// </summary>
internal sealed partial class Supervisor : IDisposable
{
    private readonly Socket socket = new(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
    private readonly ManualResetEventSlim ready = new();
    private readonly Thread listener;
    private long acknowledged;

    /// <summary>Begins to listen.</summary>
    /// <param name="path">Where; nothing is there yet.</param>
    public Supervisor(string path)
    {
        socket.Bind(new UnixDomainSocketEndPoint(path));
        listener = new Thread(Listen) { IsBackground = true };
        listener.Start();
    }

    /// <summary>How many events the process said to be in the journal.</summary>
    public long Acknowledged => Interlocked.Read(ref acknowledged);

    /// <summary>Waits until the process says that it is ready.</summary>
    public bool WaitUntilReady(TimeSpan patience) => ready.Wait(patience);

    public void Dispose()
    {
        // What was sent before a kill still waits in the socket: it was said.
        SpinWait.SpinUntil(() => socket.Available == 0);
        socket.Shutdown(SocketShutdown.Both);
        listener.Join();
        socket.Dispose();
        ready.Dispose();
    }

    private void Listen()
    {
        var buffer = new byte[4096];
        while (socket.Receive(buffer) is > 0 and var length)
        {
            var message = Encoding.UTF8.GetString(buffer.AsSpan(0, length));
            if (message == "READY=1")
            {
                ready.Set();
            }
            else if (InTheJournal().Match(message) is { Success: true } match)
            {
                Interlocked.Exchange(ref acknowledged, long.Parse(match.Groups[1].Value));
            }
        }
    }

    [GeneratedRegex(@"^STATUS=.* (\d+) events in the journal$")]
    private static partial Regex InTheJournal();
}
