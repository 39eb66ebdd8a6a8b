using System.Collections.Immutable;
using NodaTime;

namespace RackController.Bench;

/// <summary>What became of an expectation.</summary>
/// <param name="Expectation">The expectation.</param>
/// <param name="Words">The expectation in plain words.</param>
/// <param name="Judged">At how many moments there was something to judge.</param>
/// <param name="Failure">What went against it; null when it was met.</param>
public sealed record Verdict(Expectation Expectation, string Words, int Judged, Failure? Failure)
{
    /// <summary>Whether it was met.</summary>
    public bool IsMet => Failure is null;
}

/// <summary>The moment that an expectation was not met, and what led there.</summary>
/// <param name="At">The true time.</param>
/// <param name="Elapsed">Time since the run began.</param>
/// <param name="Seen">What was the case instead.</param>
/// <param name="Causes">What led there, earliest first.</param>
public sealed record Failure(Instant At, Duration Elapsed, string Seen, ImmutableArray<LogEntry> Causes);
