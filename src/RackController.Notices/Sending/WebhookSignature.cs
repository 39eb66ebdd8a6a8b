using System.Security.Cryptography;
using System.Text;

namespace RackController.Notices;

/// <summary>Signs a request as Standard Webhooks has it: HMAC-SHA256 over id, time and body, with a secret that both sides know, so that
/// whoever gets it knows who sent it, and that it is neither changed nor old.</summary>
internal static class WebhookSignature
{
    private const string Prefix = "whsec_";

    // The specification asks for 24 to 64 bytes.
    private const int LeastBytes = 24;
    private const int MostBytes = 64;

    /// <summary>The value of the header <c>webhook-signature</c>.</summary>
    /// <param name="secret">The key, in bytes.</param>
    /// <param name="id">The value of <c>webhook-id</c>.</param>
    /// <param name="timestamp">The value of <c>webhook-timestamp</c>: seconds since 1970.</param>
    /// <param name="body">The body, exactly as it is sent.</param>
    public static string Of(byte[] secret, string id, long timestamp, string body) =>
        "v1," + Convert.ToBase64String(HMACSHA256.HashData(secret, Encoding.UTF8.GetBytes($"{id}.{timestamp}.{body}")));

    /// <summary>Reads a secret as it is handed out: <c>whsec_</c> and base64.</summary>
    /// <param name="text">The secret.</param>
    /// <returns>The key; null where it is none.</returns>
    public static byte[]? KeyOf(string text)
    {
        var key = new byte[text.Length];
        return text.StartsWith(Prefix, StringComparison.Ordinal) && Convert.TryFromBase64String(text[Prefix.Length..], key, out var length)
            && length is >= LeastBytes and <= MostBytes
            ? key[..length]
            : null;
    }
}
