using System.Security.Cryptography;
using System.Text;

namespace RackController.Page;

/// <summary>What a password is checked by: PBKDF2-HMAC-SHA256. It takes a noticeable part of a second, on purpose.</summary>
/// <param name="Iterations">How often it was hashed.</param>
/// <param name="Salt">What was mixed in, so that two people with one password have two hashes.</param>
/// <param name="Hash">What came of it.</param>
public sealed record PasswordHash(int Iterations, byte[] Salt, byte[] Hash)
{
    /// <summary>How often a new password is hashed. OWASP Password Storage Cheat Sheet for PBKDF2-HMAC-SHA256, from memory.</summary>
    public const int NewIterations = 600_000;

    /// <summary>More would keep a small board busy for minutes: such a file was not written by this program.</summary>
    public const int MostIterations = 10_000_000;

    private const int SaltBytes = 16;
    private const int HashBytes = 32;

    /// <summary>Whether it was hashed less often than is asked today.</summary>
    public bool IsOld => Iterations < NewIterations;

    /// <summary>Hashes a password.</summary>
    /// <param name="password">The password.</param>
    public static PasswordHash Of(string password)
    {
        var salt = RandomNumberGenerator.GetBytes(SaltBytes);
        return new PasswordHash(NewIterations, salt, Derive(password, salt, NewIterations));
    }

    /// <summary>Whether a password is the one that was hashed.</summary>
    /// <param name="password">The password.</param>
    public bool Fits(string password) => CryptographicOperations.FixedTimeEquals(Hash, Derive(password, Salt, Iterations));

    // Taken as it is typed: without the tables of a locale (InvariantGlobalization) .NET leaves text as it is where Unicode would have it
    // composed (NFC). Keyboards of one person compose alike.
    private static byte[] Derive(string password, byte[] salt, int iterations) =>
        Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes(password), salt, iterations, HashAlgorithmName.SHA256, HashBytes);
}
