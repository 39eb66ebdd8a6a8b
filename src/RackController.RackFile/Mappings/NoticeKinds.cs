using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>Which hosts lie within this machine or the house, by what is written: a name that only a resolver could judge does
/// not.</summary>
internal static class NearHost
{
    /// <summary>Whether a host is near.</summary>
    /// <param name="host">A name or an IP address.</param>
    public static bool Is(string host) => host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && Is(address));

    // Loopback, RFC 1918, RFC 3927, RFC 4193 and RFC 4291 (link-local).
    private static bool Is(IPAddress address)
    {
        var known = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        if (IPAddress.IsLoopback(known) || known.AddressFamily == AddressFamily.InterNetworkV6)
        {
            return IPAddress.IsLoopback(known) || known.IsIPv6UniqueLocal || known.IsIPv6LinkLocal;
        }

        var bytes = known.GetAddressBytes();
        return bytes[0] == 10 || (bytes[0] == 172 && bytes[1] is >= 16 and <= 31) || (bytes[0] == 192 && bytes[1] == 168)
            || (bytes[0] == 169 && bytes[1] == 254);
    }
}

/// <summary>The address of a mailbox.</summary>
internal sealed partial class MailboxKind : ScalarKind<string>
{
    /// <inheritdoc/>
    public override string Expected => "a mail address, such as `grower@home.example`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = Mailbox().ToString(),
        ["maxLength"] = 254,
        ["examples"] = new JsonArray("grower@home.example"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return text.Length <= 254 && Mailbox().IsMatch(text) ? null : new Misfit("not a mail address");
    }

    // Of what RFC 5321 allows, what people have: no quotes, no comments, no names beside the address.
    [GeneratedRegex(@"^[A-Za-z0-9!#$%&'*+/=?^_{|}~-]+(\.[A-Za-z0-9!#$%&'*+/=?^_{|}~-]+)*@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)*$")]
    private static partial Regex Mailbox();
}

/// <summary>The name or IP address of a server.</summary>
internal sealed class HostKind : ScalarKind<string>
{
    /// <inheritdoc/>
    public override string Expected => "the name or IP address of a server, such as `mail.home.example`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["minLength"] = 1,
        ["maxLength"] = 253,
        ["examples"] = new JsonArray("mail.home.example"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return text.Length <= 253 && Uri.CheckHostName(text) is UriHostNameType.Dns or UriHostNameType.IPv4 or UriHostNameType.IPv6
            ? null
            : new Misfit("not the name of a server", text.Contains(':', StringComparison.Ordinal)
                ? "write the name alone, and its port under `port`"
                : null);
    }
}

/// <summary>A web address that may be asked: by HTTPS, or by HTTP within this machine or the house.</summary>
internal sealed class WebAddressKind : ScalarKind<Uri>
{
    private const int Longest = 500;

    /// <inheritdoc/>
    public override string Expected => "a web address, such as `https://home.example/rack`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = "^https?://",
        ["maxLength"] = Longest,
        ["examples"] = new JsonArray("https://home.example/rack"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out Uri value)
    {
        if (text.Length > Longest || !Uri.TryCreate(text, UriKind.Absolute, out value!) || value.Scheme is not ("https" or "http"))
        {
            value = null!;
            return new Misfit("not a web address");
        }

        return value.UserInfo.Length > 0
                ? new Misfit("with a name or password in it", "leave them out: a rack file holds no secrets")
            : value.Scheme == "http" && !NearHost.Is(value.Host)
                ? new Misfit(
                    "which anybody on the way could read and change",
                    "ask by HTTPS; plain HTTP will do for an IP address of this machine or the house only")
            : null;
    }
}

/// <summary>The path of a file that holds a secret.</summary>
internal sealed class PathKind : ScalarKind<string>
{
    /// <inheritdoc/>
    public override string Expected => "the whole path of a file, such as `/etc/rackcontroller/mail-password`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = "^/",
        ["maxLength"] = 500,
        ["examples"] = new JsonArray("/etc/rackcontroller/mail-password"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return text.Length > 500 || text.Any(char.IsControl) ? new Misfit("no path")
            : text[0] != '/' ? new Misfit("not a whole path", "begin it with `/`: where the process that sends notices is, nobody knows")
            : null;
    }
}
