using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What came of replaying one run.</summary>
public sealed record ReplayedRun
{
    /// <summary>Its number in the journal.</summary>
    public required long Number { get; init; }

    /// <summary>When the part that was replayed begins; null when nothing could be.</summary>
    public Moment? From { get; init; }

    /// <summary>The last scan that was replayed.</summary>
    public Moment? Until { get; init; }

    /// <summary>How many scans are on record and were replayed.</summary>
    public long Scans { get; init; }

    /// <summary>How many changes of a command were held against each other, where the whole state of the controller is known.</summary>
    public long Commands { get; init; }

    /// <summary>How many events were.</summary>
    public long Events { get; init; }

    /// <summary>In how many scans the same happened for a reason in other words.</summary>
    public long OtherWords { get; init; }

    /// <summary>How often what the controller remembers was held against the record, and was the same.</summary>
    public long SameMemories { get; init; }

    /// <summary>How much time was replayed from what the controller remembered, until it was seen to be in the same state: what
    /// differs there says nothing.</summary>
    public Duration Settling { get; init; }

    /// <summary>What came out differently, in order; of very many the first.</summary>
    public required ImmutableArray<ReplayDifference> Differences { get; init; }

    /// <summary>How many there were.</summary>
    public long DifferenceCount { get; init; }

    /// <summary>What is not on record, in words.</summary>
    public required ImmutableArray<string> Gaps { get; init; }
}

/// <summary>Something that came out differently in a replay.</summary>
/// <param name="At">When.</param>
/// <param name="Subject">The load, or what else it is about.</param>
/// <param name="Recorded">What is on record.</param>
/// <param name="Replayed">What came out now.</param>
/// <param name="Why">Why that came out, step by step.</param>
public sealed record ReplayDifference(
    Moment At, string Subject, string Recorded, string Replayed, ImmutableArray<string> Why);
