using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Follows one pump from its commands: since when it runs or rests, in monotonic time. A command holds from the scan that
/// gave it to the next one, so a change seen now began at the scan before.
/// </summary>
internal sealed class PumpRun(LoadId pump, MonotonicTime start)
{
    public bool IsRunning { get; private set; }

    /// <summary>Since when it runs, or since when it rests. Unknown before the start, which is taken as just stopped.</summary>
    public MonotonicTime Since { get; private set; } = start;

    /// <summary>Takes note of the command that the scan before gave; says whether it was a change.</summary>
    public bool Follow(Facts facts)
    {
        var running = facts.WasOn(pump);
        if (running == IsRunning)
        {
            // Nobody knows whether a failing output took its command: the rest begins once it works again.
            Since = running || facts.Conditions.Io.IsOk ? Since : facts.Now.Monotonic;
            return false;
        }

        IsRunning = running;
        Since = facts.Before.Monotonic;
        return true;
    }
}
