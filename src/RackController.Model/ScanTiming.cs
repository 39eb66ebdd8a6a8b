using NodaTime;

namespace RackController.Model;

/// <summary>How often the controller looks at the rack, and when a look is so late that nothing may be trusted.</summary>
/// <param name="Period">From the start of one scan to the next. Default 100 ms; 20 ms to 1 s.</param>
/// <param name="LateAfter">A gap between two scans longer than this puts every load in its safe state. Default 1 s;
/// 300 ms to 10 s and at least three periods. No less, because a busy two-core board was measured at 148 ms.</param>
public sealed record ScanTiming(Duration Period, Duration LateAfter)
{
    /// <summary>Ten scans a second, late after one second.</summary>
    public static ScanTiming Default { get; } = new(Duration.FromMilliseconds(100), Duration.FromSeconds(1));
}
