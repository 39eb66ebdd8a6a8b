using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>A sensor or relay that has a proof test, and what became of it so far. A test is passed at a date, which outlasts
/// restarts and the time away.</summary>
/// <param name="name">The name of the sensor or load.</param>
/// <param name="kind">What sort of test it is.</param>
/// <param name="place">Where its readings and loads stand.</param>
/// <param name="interval">How often it is due.</param>
/// <param name="pace">How long its steps may take.</param>
/// <param name="steps">Its steps.</param>
internal sealed class ProofTestItem(
    string name, ProofTestKind kind, Place place, Duration interval, ProofTestPace pace, ImmutableArray<ProofTestStep> steps)
{
    public string Name => name;

    public ProofTestKind Kind => kind;

    public Place Place => place;

    public Duration Interval => interval;

    public ProofTestPace Pace => pace;

    public ImmutableArray<ProofTestStep> Steps => steps;

    /// <summary>The contact that it is about; null where it is about something else.</summary>
    public SensorId? Contact { get; init; }

    /// <summary>When it was last passed, by the calendar; null when it never was.</summary>
    public Instant? PassedAt { get; private set; }

    /// <summary>Whether it failed and has not been passed since.</summary>
    public bool HasFailed { get; private set; }

    public void Pass(Instant at)
    {
        PassedAt = at;
        HasFailed = false;
    }

    public void Fail() => HasFailed = true;

    /// <summary>A date that has not come yet was written by a clock that was wrong.</summary>
    /// <returns>Whether it had to be put right.</returns>
    public bool NotLaterThan(Instant now)
    {
        var wasLater = PassedAt > now;
        PassedAt = wasLater ? now : PassedAt;
        return wasLater;
    }

    public void Save(MemoryWriter memory)
    {
        if (PassedAt is { } at)
        {
            memory.Put($"{Key}/passed at", at);
        }

        if (HasFailed)
        {
            memory.Put($"{Key}/failed", 1);
        }
    }

    public void Restore(MemoryReader memory)
    {
        PassedAt = memory.WallTime($"{Key}/passed at");
        HasFailed = memory.Number($"{Key}/failed") == 1;
    }

    private string Key => $"{name}/proof-test";
}
