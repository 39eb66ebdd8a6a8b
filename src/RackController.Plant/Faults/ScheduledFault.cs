using RackController.Model;

namespace RackController.Plant;

/// <summary>A fault that waits for its time, acts, or is over.</summary>
internal sealed class ScheduledFault(Fault fault)
{
    private bool ended;

    /// <summary>The fault.</summary>
    public Fault Fault => fault;

    /// <summary>Whether it acts.</summary>
    public bool Acts { get; private set; }

    /// <summary>When it begins, or once it acts, when it ends.</summary>
    public MonotonicTime Due => Acts ? fault.Until : ended ? MonotonicTime.Never : fault.From;

    /// <summary>Begins it, or ends it.</summary>
    /// <returns>Whether it now acts.</returns>
    public bool Next()
    {
        ended = Acts;
        Acts = !Acts;
        return Acts;
    }
}
