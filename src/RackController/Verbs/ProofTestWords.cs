using System.Globalization;
using NodaTime;
using RackController.Control;

namespace RackController.Verbs;

/// <summary>Proof tests for people, the same in the terminal's table and on the live screen.</summary>
internal static class ProofTestWords
{
    /// <summary>When it was last passed.</summary>
    public static string LastPass(ProofTestStatus test, DateTimeZone zone) =>
        test.HasFailed ? "failed" : test.PassedAt is { } at ? Date(at, zone) : "never tested";

    /// <summary>A date.</summary>
    public static string Date(Instant at, DateTimeZone zone) =>
        at.InZone(zone).ToString("d MMM uuuu", CultureInfo.InvariantCulture);
}
