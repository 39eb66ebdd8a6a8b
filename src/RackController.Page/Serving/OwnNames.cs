using System.Collections.Immutable;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace RackController.Page;

/// <summary>By what names and addresses this machine can be reached, as far as it knows itself.</summary>
internal static class OwnNames
{
    /// <summary>Its names, the most useful first: the one that finds it on a home network (mDNS), then the plain one.</summary>
    public static ImmutableArray<string> Names
    {
        get
        {
            var name = Environment.MachineName.ToLowerInvariant();
            return name is "localhost" or "" ? ["localhost"]
                : name.Contains('.', StringComparison.Ordinal) ? [name] : [$"{name}.local", name];
        }
    }

    /// <summary>Its addresses; none where the kernel does not say.</summary>
    public static ImmutableArray<IPAddress> Addresses()
    {
        try
        {
            return
            [
                .. NetworkInterface.GetAllNetworkInterfaces()
                    .Where(card => card.OperationalStatus == OperationalStatus.Up)
                    .SelectMany(card => card.GetIPProperties().UnicastAddresses)
                    .Select(unicast => unicast.Address)
                    .Where(address => !IPAddress.IsLoopback(address) && !address.IsIPv6LinkLocal)
                    .OrderBy(address => address.AddressFamily == AddressFamily.InterNetwork ? 0 : 1),
            ];
        }
        catch (Exception e) when (e is NetworkInformationException or IOException or PlatformNotSupportedException)
        {
            // A unit may keep the service from asking; names are enough.
            return [];
        }
    }

    // Addresses of the newer kind are too long for anybody to type.
    private static IEnumerable<string> OfOldKind() =>
        Addresses().Where(address => address.AddressFamily == AddressFamily.InterNetwork).Select(address => address.ToString());

    /// <summary>How a place that is listened at is opened in a browser.</summary>
    public static ImmutableArray<string> Links(ListenSpot spot)
    {
        if (!spot.IsSecure)
        {
            return [$"http://{spot.At}/"];
        }

        var isAny = spot.At.Address.Equals(IPAddress.Any) || spot.At.Address.Equals(IPAddress.IPv6Any);
        return isAny
            ? [.. Names.Take(1).Concat(OfOldKind()).Select(host => $"https://{host}:{spot.At.Port}/")]
            : [$"https://{spot.At}/"];
    }
}
