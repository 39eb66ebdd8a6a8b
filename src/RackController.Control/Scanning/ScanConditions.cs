using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// How the scan itself went, as its caller saw it. Control cannot know when a scan was meant to begin, since a bench
/// leaps from one change to the next; so being late is a fact that is handed in, like a reading.
/// </summary>
/// <param name="Io">Whether inputs and outputs have worked since the scan before.</param>
/// <param name="LateBy">How much later than meant this scan began; zero or more.</param>
public readonly record struct ScanConditions(IoOutcome Io, Duration LateBy)
{
    /// <summary>Inputs and outputs work, and the scan is on time.</summary>
    public static ScanConditions Good => default;
}
