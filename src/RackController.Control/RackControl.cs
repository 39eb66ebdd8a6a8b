using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Decides, scan after scan, what every load of a site is told. Pure: the same site, memory, moments, readings and requests
/// give the same commands and events, bit for bit. Not safe for two threads; the caller owns the order of scans.
/// </summary>
public sealed class RackControl
{
    private readonly RelayCommands commands;

    /// <summary>Takes charge of a site.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="start">The moment of taking charge; everything is in its safe state until the first scan.</param>
    /// <param name="memory">What an earlier run remembered; null for a rack that was never driven.</param>
    public RackControl(Site site, Moment start, ControlMemory? memory)
    {
        Site = site;
        commands = new RelayCommands(site);
        NextChange = start.Monotonic;
    }

    /// <summary>The site under control.</summary>
    public Site Site { get; }

    /// <summary>The earliest time at which anything could change if no reading changes and nobody asks for anything.
    /// <see cref="MonotonicTime.Never"/> when nothing is due.</summary>
    public MonotonicTime NextChange { get; private set; }

    /// <summary>One look at the rack: validates the readings, asks what is wanted, lets the interlocks object, admits what
    /// the circuits can carry, and commands.</summary>
    /// <param name="now">The moment of this scan; its monotonic time is later than that of the scan before.</param>
    /// <param name="readings">What the sensors say.</param>
    /// <param name="conditions">How the scan itself went: whether it is late, and whether inputs and outputs work.</param>
    /// <param name="requests">What people asked for since the scan before, in order.</param>
    /// <param name="events">Where events go.</param>
    /// <returns>What every load is told; the same instance at every scan.</returns>
    public RelayCommands Scan(
        in Moment now, Readings readings, in ScanConditions conditions, ReadOnlySpan<OperatorRequest> requests, IEventSink events) => commands;

    /// <summary>Why each load is in its state, as of the last scan.</summary>
    public ImmutableArray<LoadWhy> Why() => commands.Count < 0 ? default : [];

    /// <summary>What the schedule will do next, soonest first, as of the last scan.</summary>
    public ImmutableArray<DueNext> DueNext() => commands.Count < 0 ? default : [];

    /// <summary>Every alarm that is not normal, most urgent first.</summary>
    public ImmutableArray<Alarm> Alarms() => commands.Count < 0 ? default : [];

    /// <summary>Where the flood cycle of a rack is.</summary>
    /// <param name="rack">The rack.</param>
    public FloodPhase FloodPhase(RackId rack) => commands.Count < 0 ? default : Control.FloodPhase.Idle;

    /// <summary>Counts up whenever something changed that <see cref="Save"/> must keep; unchanged in a steady scan.</summary>
    public long MemoryVersion { get; private set; }

    /// <summary>What must be remembered across a restart, as of the last scan.</summary>
    public ControlMemory Save() => throw new NotSupportedException();
}
