using RackController.Control;

namespace RackController.Service;

/// <summary>Counts what happened since the last summary.</summary>
internal sealed class HourlyTally
{
    private int switched;
    private int floods;
    private int interlocks;
    private int alarms;

    /// <summary>Counts one event.</summary>
    public void Count(ControlEvent happened)
    {
        switch (happened.Kind)
        {
            case EventKind.Load:
                switched++;
                break;
            case EventKind.Flood:
                floods += happened.What == FloodEvent.Filling ? 1 : 0;
                break;
            case EventKind.Interlock:
                interlocks++;
                break;
            case EventKind.Alarm:
                alarms++;
                break;
        }
    }

    /// <summary>Says what was counted, and counts from nothing again.</summary>
    public string Take()
    {
        var words = $"{floods} floods, {switched} loads switched, {interlocks} interlock and {alarms} alarm events";
        (switched, floods, interlocks, alarms) = (0, 0, 0, 0);
        return words;
    }
}
