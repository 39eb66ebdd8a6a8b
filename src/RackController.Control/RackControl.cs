using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Decides, scan after scan, what every load of a site is told. Pure: the same site, memory, moments, readings and requests
/// give the same commands and events, bit for bit. Not safe for two threads; the caller owns the order of scans.
/// </summary>
public sealed class RackControl
{
    private readonly Parts parts;
    private readonly Facts facts;
    private readonly Agenda agenda = new();
    private readonly RelayCommands commands;
    private readonly Demand[] demands;
    private readonly Decision[] decisions;
    private readonly bool[] wanted;
    private readonly bool[] circuitIsQuiet;

    /// <summary>Takes charge of a site.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="start">The moment of taking charge; everything is in its safe state until the first scan.</param>
    /// <param name="memory">What an earlier run remembered; null for a rack that was never driven.</param>
    public RackControl(Site site, Moment start, ControlMemory? memory)
    {
        ArgumentNullException.ThrowIfNull(site);
        Site = site;
        parts = new Parts(site, start, memory);
        facts = new Facts(site, parts.Desks, start);
        commands = new RelayCommands(site);
        demands = new Demand[site.Loads.Length];
        decisions = new Decision[site.Loads.Length];
        wanted = new bool[site.Loads.Length];
        circuitIsQuiet = new bool[site.Circuits.Length];
        NextChange = start.Monotonic;
    }

    /// <summary>The site under control.</summary>
    public Site Site { get; }

    /// <summary>The earliest time at which anything could change if every sensor goes on reporting what it reports now and
    /// nobody asks for anything; <see cref="MonotonicTime.Never"/> when nothing is due, a time that has passed when the
    /// very next scan may bring a change.</summary>
    public MonotonicTime NextChange { get; private set; }

    /// <summary>Every value of a measuring sensor at which something may be decided differently. Together with
    /// <see cref="NextChange"/> it says when a scan could matter: at that time, when a contact changes, or when a measured value passes
    /// one of these.</summary>
    public ImmutableArray<SensorLevel> Levels => parts.Levels;

    /// <summary>Counts up whenever something changed that <see cref="Save"/> must keep; unchanged in a steady scan.</summary>
    public long MemoryVersion => parts.MemoryVersion;

    /// <summary>One look at the rack: validates the readings, asks what is wanted, lets the interlocks object, admits what
    /// the circuits can carry, and commands.</summary>
    /// <param name="now">The moment of this scan; its monotonic time is later than that of the scan before.</param>
    /// <param name="readings">What the sensors say.</param>
    /// <param name="conditions">How the scan itself went: whether it is late, and whether inputs and outputs work.</param>
    /// <param name="requests">What people asked for since the scan before, in order.</param>
    /// <param name="events">Where events go.</param>
    /// <returns>What every load is told; the same instance at every scan.</returns>
    public RelayCommands Scan(
        in Moment now, Readings readings, in ScanConditions conditions, ReadOnlySpan<OperatorRequest> requests,
        IEventSink events)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(events);
        facts.Begin(now, conditions, commands);
        agenda.Begin(now);
        parts.Clock.Watch(now, events);
        Take(requests, events);

        parts.Validation.Validate(readings, facts, agenda, events);
        Demand(events);
        parts.Interlocks.Look(facts, decisions, circuitIsQuiet, agenda, events);
        Admit();
        Command(events);

        parts.Alarms.Follow(facts, agenda, events);
        NextChange = agenda.Earliest;
        return commands;
    }

    /// <summary>Why each load is in its state, as of the last scan.</summary>
    public ImmutableArray<LoadWhy> Why() => [.. Site.Loads.Select(load => Words.Why(load, commands[load.Id], decisions[load.Id.Index]))];

    /// <summary>What the schedule will do next, soonest first, as of the last scan.</summary>
    public ImmutableArray<DueNext> DueNext()
    {
        var due = new List<DueNext>();
        foreach (var demand in parts.Demands)
        {
            demand.AddDueNext(due, demands, facts.Now);
        }

        return [.. due.OrderBy(item => item.At).ThenBy(item => item.Subject, StringComparer.Ordinal)];
    }

    /// <summary>Every alarm that is not normal, most urgent first, as of the last scan.</summary>
    public ImmutableArray<Alarm> Alarms() => parts.Alarms.Standing(facts.Now);

    /// <summary>Where the flood cycle of a rack is.</summary>
    /// <param name="rack">The rack.</param>
    public FloodPhase FloodPhase(RackId rack) => parts.Demands[rack.Index].Phase;

    /// <summary>Whether a tier takes part.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom.</param>
    public bool IsTierInUse(RackId rack, int tierNumber) => facts.IsTierInUse(rack, tierNumber);

    /// <summary>What must be remembered across a restart, as of the last scan.</summary>
    public ControlMemory Save() => parts.Save(facts.Now);

    private DecisionWords Words => new(parts, new ClockFace(facts.Now, Site.Zone));

    private void Take(ReadOnlySpan<OperatorRequest> requests, IEventSink events)
    {
        foreach (var request in requests)
        {
            parts.Desk.Take(request, facts.Now, events);
            agenda.AddNextScan();
        }

        foreach (var desk in parts.Desks)
        {
            desk.Look(facts.Now, agenda);
        }
    }

    private void Demand(IEventSink events)
    {
        foreach (var rack in Site.Racks)
        {
            var demand = parts.Demands[rack.Id.Index];
            demand.Update(facts, demands, agenda, events);
            facts.About(rack.Id) = RackFacts.Of(rack, demand);
        }

        foreach (var load in Site.Loads)
        {
            var stopped = parts.Desks[load.Rack.Index].IsStopped;
            var wish = stopped ? new Demand(load.SafeState, DemandCause.Stopped, default) : demands[load.Id.Index];
            decisions[load.Id.Index] = new Decision(wish, Forbidder: -1, SafeStater: -1);
        }
    }

    private void Admit()
    {
        foreach (var load in Site.Loads)
        {
            var decision = decisions[load.Id.Index];
            var wish = decision.SafeStater >= 0 ? load.SafeState : decision.Demand.State;
            wanted[load.Id.Index] = wish == SwitchState.On && decision.Forbidder < 0;
        }

        parts.Admission.Admit(facts, wanted, circuitIsQuiet, agenda);
    }

    private void Command(IEventSink events)
    {
        foreach (var load in Site.Loads)
        {
            var isOn = parts.Admission.Result(load.Id).Outcome == AdmissionOutcome.Admitted;
            var state = isOn ? SwitchState.On : SwitchState.Off;
            Invariant.Holds(!isOn || decisions[load.Id.Index].Forbidder < 0, "a forbidden load is off in the same scan");
            if (state == commands[load.Id])
            {
                continue;
            }

            commands[load.Id] = state;
            agenda.AddNextScan();
            var why = Words.Why(load, state, decisions[load.Id.Index]);
            events.Take(new ControlEvent(facts.Now, EventKind.Load, load.Name, isOn ? "on" : "off", why.Summary));
        }
    }
}
