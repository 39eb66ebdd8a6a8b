using System.Net;
using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>From where a request comes.</summary>
internal static class AddressWords
{
    private const int NetworkBytes = 8;

    /// <summary>The address, as the record has it.</summary>
    public static string Of(HttpContext context) => Of(context.Connection.RemoteIpAddress);

    /// <summary>The address, as the record has it.</summary>
    public static string Of(IPAddress? address) =>
        address is null ? "an unknown address" : IPAddress.IsLoopback(address) ? "this machine" : Plain(address).ToString();

    /// <summary>What is counted as one address: of IPv6 the network, since a house has more addresses in it than
    /// anybody can count.</summary>
    public static IPAddress Counted(IPAddress? address)
    {
        if (address is null)
        {
            return IPAddress.None;
        }

        var plain = Plain(address);
        var bytes = plain.GetAddressBytes();
        return bytes.Length <= NetworkBytes || IPAddress.IsLoopback(plain) ? plain
            : new IPAddress([.. bytes[..NetworkBytes], .. new byte[NetworkBytes]]);
    }

    private static IPAddress Plain(IPAddress address) => address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
}
