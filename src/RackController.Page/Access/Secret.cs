using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace RackController.Page;

/// <summary>What only one browser or program knows. 256 bits, so that no guess is worth a try, and a plain digest is enough to
/// keep.</summary>
internal static class Secret
{
    private const int Bytes = 32;

    /// <summary>A new one, in characters that an address, a header and a cookie may carry.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>What of it is kept: its SHA-256, in hexadecimal.</summary>
    public static string Digest(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    /// <summary>What the forms of its session carry. It follows from the secret, and nobody comes from it to the secret.</summary>
    public static string FormToken(string secret) =>
        Base64Url.EncodeToString(HMACSHA256.HashData(Encoding.UTF8.GetBytes(secret), "forms of a session"u8));

    /// <summary>Whether two are the same, in a time that tells nothing of where they differ.</summary>
    public static bool AreSame(string one, string other) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(one), Encoding.UTF8.GetBytes(other));
}
