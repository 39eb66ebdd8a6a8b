using RackController.Model;

namespace RackController.Service;

/// <summary>The moment for what is told, not for what is driven: a clock that fails leaves the last moment that it gave, so that its
/// failure can be told at all. From any thread.</summary>
/// <param name="clock">The clock.</param>
internal sealed class TellingTime(IScanClock clock)
{
    private readonly Lock gate = new();
    private Moment last;

    /// <summary>The moment, or the last that is known.</summary>
    public Moment Now()
    {
        lock (gate)
        {
            try
            {
                last = clock.Now();
            }
            catch (InvariantBrokenException)
            {
                last = last with { WallTrusted = false };
            }

            return last;
        }
    }
}
