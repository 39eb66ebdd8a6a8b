using System.Collections.Immutable;
using System.Net;

namespace RackController.Page;

/// <summary>One place that is listened at.</summary>
/// <param name="At">The address and port.</param>
/// <param name="Socket">The socket that is there already; null where one is opened.</param>
internal sealed record ListenSpot(IPEndPoint At, InheritedSocket? Socket)
{
    /// <summary>Whether it is spoken to by HTTPS: wherever others than this machine can reach it.</summary>
    public bool IsSecure => !IPAddress.IsLoopback(At.Address);
}

/// <summary>Where the page is listened at. Before somebody is set up nobody signs in, and then it is this machine only.</summary>
internal static class ListenPlan
{
    /// <summary>Where, as things are.</summary>
    /// <param name="options">What was asked for.</param>
    /// <param name="isAnybodyKnown">Whether somebody is set up.</param>
    public static ImmutableArray<ListenSpot> Of(PageOptions options, bool isAnybodyKnown)
    {
        ImmutableArray<ListenSpot> asked = options.Sockets.IsEmpty
            ? [new ListenSpot(options.Listen, null)]
            : [.. options.Sockets.Select(socket => new ListenSpot(socket.At, socket))];
        if (isAnybodyKnown || asked.All(spot => !spot.IsSecure))
        {
            return asked;
        }

        // A socket that is there already is not accepted from; opening another at its port would be refused.
        return options.Sockets.IsEmpty
            ? [new ListenSpot(new IPEndPoint(LoopbackLike(options.Listen), options.Listen.Port), null)]
            : [.. asked.Where(spot => !spot.IsSecure)];
    }

    private static IPAddress LoopbackLike(IPEndPoint listen) =>
        listen.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? IPAddress.IPv6Loopback : IPAddress.Loopback;
}
