using RackController.Control;

namespace RackController.Bench;

/// <summary>What every form of a cause-and-effect chart says.</summary>
public static class ChartWords
{
    /// <summary>How to read one.</summary>
    public const string Legend =
        "Off: may not be on. Safe: takes its safe state. There: at the place of the cause. Empty: a person is told. "
        + "Forbidding always wins over wishing, and no request overrides a row.";

    /// <summary>What none of it replaces.</summary>
    public const string Caution =
        "Mains power and water together can kill. The controller is certified to no standard; a wired float cut-out and ground-fault "
        + "protection belong in front of it, and local codes and a licensed electrician judge them.";

    /// <summary>What a person is told by the rows of a chart, most serious first.</summary>
    /// <param name="chart">The chart.</param>
    public static IEnumerable<(CauseAndEffectRow Row, AlarmText Alarm)> Alarms(RackChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        return chart.Lines.Where(line => line.Row.Alarm is not null).Select(line => (line.Row, line.Row.Alarm!));
    }

    /// <summary>How urgent an alarm is, in a word.</summary>
    /// <param name="alarm">What is told.</param>
    public static string Priority(AlarmText alarm)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        return alarm.Priority.ToString().ToLowerInvariant();
    }
}
