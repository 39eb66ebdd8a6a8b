using RackController.Model;

namespace RackController.Control;

/// <summary>What a proof test is about, in the words of screen and page.</summary>
public static class ProofTestKindWords
{
    /// <summary>A kind in a word or two.</summary>
    /// <param name="kind">A kind.</param>
    /// <exception cref="InvariantBrokenException">It is none of the kinds.</exception>
    public static string InWords(this ProofTestKind kind) => kind switch
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
}
