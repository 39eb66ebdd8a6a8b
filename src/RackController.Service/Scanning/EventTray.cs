using System.Runtime.InteropServices;
using RackController.Control;

namespace RackController.Service;

/// <summary>Gathers the events of one scan. Its room is reused: a scan without events allocates nothing.</summary>
internal sealed class EventTray : IEventSink
{
    private readonly List<ControlEvent> events = new(64);

    public bool IsEmpty => events.Count == 0;

    /// <summary>What is in it, until it is emptied or more is put in.</summary>
    public ReadOnlySpan<ControlEvent> Events => CollectionsMarshal.AsSpan(events);

    public void Take(ControlEvent happened) => events.Add(happened);

    /// <summary>Empties the tray into an array of its own.</summary>
    public ControlEvent[] Empty()
    {
        ControlEvent[] taken = [.. events];
        events.Clear();
        return taken;
    }
}
