using NodaTime;

namespace RackController.Notices.Tests;

/// <summary>A wall clock that goes only where a test sets it.</summary>
internal sealed class StillClock(Instant now) : IClock
{
    public Instant Now { get; set; } = now;

    public Instant GetCurrentInstant() => Now;
}
