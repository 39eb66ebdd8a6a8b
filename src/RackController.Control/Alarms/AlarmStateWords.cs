using RackController.Model;

namespace RackController.Control;

/// <summary>The states of an alarm in the words of ISA-18.2, the same in events, scenarios and reports.</summary>
public static class AlarmStateWords
{
    /// <summary>A state in the words of the standard: <c>returned unacknowledged</c>.</summary>
    /// <param name="state">A state.</param>
    /// <exception cref="InvariantBrokenException">It is none of the states.</exception>
    public static string InWords(this AlarmState state) => state switch
    {
        AlarmState.Normal => "normal",
        AlarmState.Unacknowledged => "unacknowledged",
        AlarmState.Acknowledged => "acknowledged",
        AlarmState.ReturnedUnacknowledged => "returned unacknowledged",
        AlarmState.Latched => "latched",
        AlarmState.Shelved => "shelved",
        AlarmState.SuppressedByDesign => "suppressed by design",
        AlarmState.OutOfService => "out of service",
        _ => throw new InvariantBrokenException($"ISA-18.2 knows no alarm state {state}"),
    };
}
