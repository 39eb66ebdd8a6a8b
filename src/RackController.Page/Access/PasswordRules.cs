using System.Collections.Frozen;
using System.Text;

namespace RackController.Page;

/// <summary>Which names and passwords are taken. NIST SP 800-63B, from memory: a least length, any character, no rules of composition,
/// and none that everybody tries first.</summary>
public static class PasswordRules
{
    /// <summary>The least length of a password, in characters.</summary>
    public const int LeastLength = 10;

    /// <summary>The greatest length of a password, in characters.</summary>
    public const int MostLength = 256;

    /// <summary>The greatest length of a name, in characters.</summary>
    public const int MostNameLength = 40;

    // Long enough for us and among what leaked lists have most of; from memory.
    private static readonly FrozenSet<string> common = new[]
    {
        "1234567890", "12345678910", "123456789a", "0123456789", "0987654321", "9876543210", "1111111111", "0000000000", "1q2w3e4r5t",
        "1qaz2wsx3edc", "q1w2e3r4t5", "qwertyuiop", "qwerty12345", "qwerty123456", "qwertyuiop123", "asdfghjkl1", "asdfghjkl123",
        "password12", "password123", "password1234", "password12345", "passw0rd123", "password1!", "password123!", "passwordpassword",
        "iloveyou12", "iloveyou123", "letmein123", "letmein1234", "welcome123", "welcome1234", "administrator", "admin12345", "admin123456",
        "changeme123", "football123", "baseball123", "basketball", "sunshine123", "princess123", "superman123", "michael123", "computer123",
        "trustno1trustno1", "abcdefghij", "abcd123456", "abc1234567", "a123456789", "aa12345678", "zaq12wsxcde3",
        "correcthorsebatterystaple",
        "raspberrypi", "raspberry123", "rackcontroller",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>What is wrong with a password and what to do; null when nothing is.</summary>
    /// <param name="password">The password.</param>
    /// <param name="name">Whose it is to be.</param>
    /// <param name="site">The name of the site.</param>
    public static string? Complaint(string password, string name, string site)
    {
        ArgumentNullException.ThrowIfNull(password);
        var length = password.EnumerateRunes().Count();
        return length < LeastLength
            ? $"The password has {length} {(length == 1 ? "character" : "characters")}: take at least {LeastLength}. Four words that do "
                + "not belong together do well."
            : length > MostLength ? $"The password has {length} characters: take {MostLength} at most."
            : common.Contains(password) || password.EnumerateRunes().Distinct().Count() < 3
                ? "This password is among the first that are tried: take another."
            : IsAbout(password, name) || IsAbout(password, site)
                ? "The password is little more than a name that anybody here knows: take another."
            : null;
    }

    /// <summary>What is wrong with a name and what to do; null when nothing is.</summary>
    /// <param name="name">The name.</param>
    public static string? NameComplaint(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Length is 0 or > MostNameLength ? $"A name has 1 to {MostNameLength} characters."
            : name.EnumerateRunes().Any(rune => Rune.IsControl(rune)) ? "A name has no control characters, such as the end of a line."
            : name != name.Trim() ? "A name neither begins nor ends with a space."
            : null;
    }

    // The name with a few more characters is the name.
    private static bool IsAbout(string password, string name)
    {
        const int fewMore = 4;
        return name.Length > 2 && password.Contains(name, StringComparison.OrdinalIgnoreCase) && password.Length - name.Length <= fewMore;
    }
}
