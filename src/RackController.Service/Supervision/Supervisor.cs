using System.Net.Sockets;
using System.Text;
using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Tells the process that supervises this one how it is, by the datagram protocol of <c>sd_notify(3)</c>: ready, stopping, a
/// status line, and the watchdog's sign of life. Without a supervisor it is silent. A message that cannot be sent is
/// an alarm and otherwise let go on purpose: the rack matters more than who watches it, and a
/// watchdog that hears nothing does what it is for.
/// </summary>
internal sealed class Supervisor : IWatchdog, IDisposable
{
    private static readonly byte[] SignOfLife = "WATCHDOG=1"u8.ToArray();

    private readonly Socket? socket;
    private readonly Duration? signEvery;
    private MonotonicTime signDue = MonotonicTime.Zero;

    /// <summary>Finds the supervisor.</summary>
    /// <param name="address">What <c>NOTIFY_SOCKET</c> says: a path, or a name in the abstract namespace behind an
    /// <c>@</c>; null or empty when nobody supervises.</param>
    /// <param name="watchdog">Within what time the supervisor wants a sign of life; null when it wants none.</param>
    public Supervisor(string? address, Duration? watchdog)
    {
        signEvery = watchdog / 3;
        if (string.IsNullOrEmpty(address))
        {
            return;
        }

        socket = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified) { Blocking = false };
        try
        {
            socket.Connect(new UnixDomainSocketEndPoint(address[0] == '@' ? '\0' + address[1..] : address));
        }
        catch (SocketException e)
        {
            socket.Dispose();
            socket = null;
            Complaint = $"the supervisor's socket {address} cannot be reached: {e.Message}";
        }
    }

    /// <summary>What went wrong with telling the supervisor last; null when nothing did.</summary>
    public string? Complaint { get; private set; }

    /// <summary>Whether anybody supervises this process.</summary>
    public bool IsPresent => socket is not null;

    /// <summary>The supervisor that the environment of this process names.</summary>
    public static Supervisor FromEnvironment()
    {
        var isForThisProcess = Environment.GetEnvironmentVariable("WATCHDOG_PID") is not { Length: > 0 } pid
            || pid == Environment.ProcessId.ToString();
        var microseconds = long.TryParse(Environment.GetEnvironmentVariable("WATCHDOG_USEC"), out var us) && us > 0 ? us : 0;
        return new Supervisor(
            Environment.GetEnvironmentVariable("NOTIFY_SOCKET"),
            isForThisProcess && microseconds > 0 ? Duration.FromNanoseconds(microseconds * 1000) : null);
    }

    /// <summary>The rack is being driven.</summary>
    public void Ready() => Send("READY=1"u8);

    /// <summary>The end has begun.</summary>
    public void Stopping() => Send("STOPPING=1"u8);

    /// <summary>One line for whoever asks the supervisor.</summary>
    /// <param name="line">The line.</param>
    public void Status(string line) => Send(Encoding.UTF8.GetBytes("STATUS=" + line.ReplaceLineEndings(" ")));

    /// <summary>Not hung, but not ready to scan either: asks for twenty seconds more, from now.</summary>
    public void AskForTime() => Send(
        "EXTEND_TIMEOUT_USEC=20000000\nWATCHDOG=1\nSTATUS=looking through the journal; every load is in its safe state"u8);

    /// <inheritdoc/>
    public void GoodScan(MonotonicTime now)
    {
        if (signEvery is { } every && now >= signDue)
        {
            signDue = now + every;
            Send(SignOfLife);
        }
    }

    public void Dispose() => socket?.Dispose();

    private void Send(ReadOnlySpan<byte> message)
    {
        try
        {
            if (socket is not null)
            {
                socket.Send(message);
                Complaint = null;
            }
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            Complaint = $"the supervisor cannot be told: {e.Message}";
        }
    }
}
