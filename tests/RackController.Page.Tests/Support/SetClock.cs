using NodaTime;

namespace RackController.Page.Tests;

/// <summary>A clock that a test sets.</summary>
internal sealed class SetClock(Instant now) : IClock
{
    public Instant Now { get; set; } = now;

    public Instant GetCurrentInstant() => Now;
}
