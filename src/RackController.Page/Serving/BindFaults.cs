using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;
using RackController.Service;

namespace RackController.Page;

/// <summary>Why an address cannot be listened at, with what to do.</summary>
internal static class BindFaults
{
    /// <summary>Starts to listen, and tells what keeps it from that.</summary>
    /// <param name="start">Starts.</param>
    /// <param name="port">At which port.</param>
    /// <exception cref="CouldNotRunException">It cannot.</exception>
    public static async Task ToldAsync(Func<Task> start, int port)
    {
        try
        {
            await start().ConfigureAwait(false);
        }
        catch (Exception e) when (Remedy(e, port) is not null)
        {
            throw new CouldNotRunException(Remedy(e, port)!, e);
        }
    }

    private static string? Remedy(Exception fault, int port) => (fault, fault.InnerException) switch
    {
        (AddressInUseException, _) or (_, AddressInUseException) =>
            $"port {port} is in use by another program, perhaps another controller: name another with --page",
        (SocketException { SocketErrorCode: SocketError.AccessDenied }, _) =>
            $"port {port} is for root only: name one above 1023 with --page",
        (SocketException { SocketErrorCode: SocketError.AddressNotAvailable }, _) =>
            "this machine does not have the address that --page names: name one of its own, or 0.0.0.0 for all",
        _ => null,
    };
}
