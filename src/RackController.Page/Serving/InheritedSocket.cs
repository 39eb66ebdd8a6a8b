using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using RackController.Service;

namespace RackController.Page;

/// <summary>A socket that the supervisor opened, so that the port is there before the service is, and the service needs
/// no right to it.</summary>
/// <param name="Handle">Its descriptor, which stays open for as long as the process lives.</param>
/// <param name="At">The address that it listens at.</param>
public sealed partial record InheritedSocket(int Handle, IPEndPoint At)
{
    private const int First = 3;

    /// <summary>Those that were handed over by the protocol of systemd (sd_listen_fds(3)); none when nobody did.</summary>
    /// <exception cref="CouldNotRunException">One of them is no socket of an IP address.</exception>
    public static ImmutableArray<InheritedSocket> All()
    {
        var isForUs = Environment.GetEnvironmentVariable("LISTEN_PID") == Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        return isForUs && int.TryParse(Environment.GetEnvironmentVariable("LISTEN_FDS"), CultureInfo.InvariantCulture, out var count)
            ? [.. Enumerable.Range(First, count).Select(Of)]
            : [];
    }

    /// <summary>A second descriptor of it, for a server that closes what it is given.</summary>
    /// <exception cref="IOException">There is no room for another.</exception>
    internal int Duplicate() => Duplicate(Handle) is var copy and >= 0
        ? copy
        : throw new IOException($"socket {Handle} cannot be taken over ({Marshal.GetLastPInvokeErrorMessage()})");

    private static InheritedSocket Of(int handle)
    {
        try
        {
            using var socket = new Socket(new SafeSocketHandle(handle, ownsHandle: false));
            return new InheritedSocket(handle, (IPEndPoint)socket.LocalEndPoint!);
        }
        catch (Exception e) when (e is SocketException or InvalidCastException or NullReferenceException)
        {
            throw new CouldNotRunException(
                $"socket {handle}, handed over by the supervisor, listens at no IP address: see its .socket unit");
        }
    }

    [LibraryImport("libc", EntryPoint = "dup", SetLastError = true)]
    private static partial int Duplicate(int handle);
}
