using System.Collections.Immutable;
using RackController.Control;

namespace RackController.Service;

/// <summary>The last few events, for a screen.</summary>
internal sealed class RecentEvents : IScanListener
{
    private const int Most = 50;

    private readonly Lock gate = new();
    private readonly Queue<ControlEvent> kept = new(Most);

    /// <summary>What happened last, newest first.</summary>
    public ImmutableArray<ControlEvent> Newest()
    {
        lock (gate)
        {
            return [.. kept.Reverse()];
        }
    }

    /// <inheritdoc/>
    public void Happened(ControlEvent[] events, ControlMemory? memory)
    {
        lock (gate)
        {
            foreach (var happened in events)
            {
                if (kept.Count == Most)
                {
                    kept.Dequeue();
                }

                kept.Enqueue(happened);
            }
        }
    }
}
