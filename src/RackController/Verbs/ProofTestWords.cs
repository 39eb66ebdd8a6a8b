using System.Globalization;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Verbs;

/// <summary>Proof tests for people, the same in the terminal's table and on the live screen.</summary>
internal static class ProofTestWords
{
    /// <summary>What sort of test it is.</summary>
    public static string Of(ProofTestKind kind) => kind switch
    {
        ProofTestKind.FloatSwitch => "float",
        ProofTestKind.WiredFloat => "wired float",
        ProofTestKind.WiredTimeRelay => "wired time relay",
        ProofTestKind.LeakRope => "leak rope",
        ProofTestKind.SupplySense => "supply sense",
        ProofTestKind.CurrentSensor => "current sensor",
        ProofTestKind.Relay => "relay",
        _ => throw new InvariantBrokenException($"every proof test has its words, {kind} too"),
    };

    /// <summary>When it was last passed.</summary>
    public static string LastPass(ProofTestStatus test, DateTimeZone zone) =>
        test.HasFailed ? "failed" : test.PassedAt is { } at ? Date(at, zone) : "never tested";

    /// <summary>A date.</summary>
    public static string Date(Instant at, DateTimeZone zone) =>
        at.InZone(zone).ToString("d MMM uuuu", CultureInfo.InvariantCulture);
}
