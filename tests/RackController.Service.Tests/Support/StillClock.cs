using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests;

/// <summary>A clock that a test moves. Sleeping moves it to the due time, plus whatever lateness the test asks for.</summary>
internal sealed class StillClock : IScanClock
{
    private static readonly Instant Start = Instant.FromUtc(2026, 6, 1, 12, 0);

    private readonly Lock gate = new();
    private Moment moment = new(MonotonicTime.FromMilliseconds(1_000_000), Start, WallTrusted: true);

    public Duration Oversleep { get; set; }

    public int Wakes { get; private set; }

    /// <summary>What the clock answers with instead of the time; null while it works.</summary>
    public Exception? Broken { get; set; }

    public Moment Now()
    {
        lock (gate)
        {
            return Broken is null ? moment : throw Broken;
        }
    }

    public void Advance(Duration by)
    {
        lock (gate)
        {
            moment = moment with { Monotonic = moment.Monotonic + by, Wall = moment.Wall + by };
        }
    }

    /// <summary>Sets the wall clock on or back.</summary>
    public void StepWall(Duration by)
    {
        lock (gate)
        {
            moment = moment with { Wall = moment.Wall + by };
        }
    }

    /// <summary>Something vouches for the wall clock, or nothing does any more.</summary>
    public void Trust(bool isTrusted)
    {
        lock (gate)
        {
            moment = moment with { WallTrusted = isTrusted };
        }
    }

    public void SleepUntil(MonotonicTime due) => Advance(Duration.Max(Duration.Zero, due - Now().Monotonic) + Oversleep);

    public void Wake() => Wakes++;

    public void Dispose()
    {
    }
}
