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
    private readonly Areas areas;
    private readonly Attention attention;
    private readonly RelayCommands commands;
    private readonly Demand[] demands;
    private readonly Decision[] decisions;
    private bool concernedAll;

    /// <summary>Takes charge of a site.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="start">The moment of taking charge; everything is in its safe state until the first scan.</param>
    /// <param name="memory">What an earlier run remembered; null for a rack that was never driven.</param>
    public RackControl(Site site, Moment start, ControlMemory? memory)
    {
        ArgumentNullException.ThrowIfNull(site);
        Site = site;
        parts = new Parts(site, start, memory);
        areas = parts.Areas;
        attention = parts.Attention;
        facts = new Facts(site, areas, parts.Desks, parts.ProofTests, start);
        commands = new RelayCommands(site);
        demands = new Demand[site.Loads.Length];
        decisions = new Decision[site.Loads.Length];
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
        attention.Begin(now);
        ListenToAll(requests, events);
        parts.Validation.Validate(readings, facts, attention, events);
        BeginLook();

        parts.Currents.Look(attention, facts);
        Demand(events);
        Look(events);
        parts.Contactors.Command(commands, parts.Admission, areas, now, events);
        Admit();
        Command(events);
        Tell(events);
        return commands;
    }

    /// <summary>Lets the next scan judge every reading and look at every rack and circuit, whether or not anything there could have
    /// changed.</summary>
    internal void LookEverywhere() => attention.CallAll();

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

    /// <summary>The proof test of every contact, current sensor and relay, and when it is due, as of the last scan.</summary>
    public ImmutableArray<ProofTestStatus> ProofTests() => parts.ProofTests.Status(facts.Now.Monotonic);

    /// <summary>The proof test that is under way, as of the last scan; null while none is.</summary>
    public ProofTestProgress? ProofTestUnderWay() => parts.ProofTestDesk.Progress(facts.Now.Monotonic);

    /// <summary>Where the flood cycle of a rack is.</summary>
    /// <param name="rack">The rack.</param>
    public FloodPhase FloodPhase(RackId rack) => parts.Demands[rack.Index].Phase;

    /// <summary>Whether a tier takes part.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom.</param>
    public bool IsTierInUse(RackId rack, int tierNumber) => parts.Demands[rack.Index].IsTierInUse(tierNumber);

    /// <summary>What people have asked of a rack that outlasts the asking, as of the last scan.</summary>
    /// <param name="rack">The rack.</param>
    public RackAsked Asked(RackId rack)
    {
        var desk = parts.Desks[rack.Index];
        return new RackAsked(desk.IsStopped, desk.HoldEndsAt - facts.Now.Monotonic, parts.Demands[rack.Index].SkipsNextFlood);
    }

    /// <summary>What would come of a flood of a rack that is asked for now, as of the last scan.</summary>
    /// <param name="rack">The rack.</param>
    public FloodOutlook FloodOutlook(RackId rack)
    {
        var pump = Site[Site[rack].Pump.Load];
        var plan = Site[rack].Schedule.Floods;
        return new FloodOutlook(
            parts.Interlocks.AllWords(pump, new ClockFace(facts.Now, Site.Zone)), parts.Admission.ShedBeside(pump),
            plan.Fill.Limit + plan.Soak, plan.Drain);
    }

    /// <summary>What must be remembered across a restart, as of the last scan.</summary>
    public ControlMemory Save() => parts.Save(facts.Now);

    private DecisionWords Words => new(parts, new ClockFace(facts.Now, Site.Zone));

    private void ListenToAll(ReadOnlySpan<OperatorRequest> requests, IEventSink events)
    {
        var isSteady = parts.Clock.Watch(facts.Now, events);
        foreach (var request in requests)
        {
            parts.Desk.Take(request, facts.Now, events);
        }

        // Of a scan that failed, the one after must hear that it is over.
        var concernsAll = !isSteady || !requests.IsEmpty || facts.IsScanFaulty;
        if (concernsAll || concernedAll || facts.Now.Monotonic >= parts.Alarms.Due)
        {
            LookEverywhere();
        }

        concernedAll = concernsAll;
    }

    private void BeginLook()
    {
        attention.Gather(facts.Now);
        foreach (var area in attention.Called)
        {
            facts.BeginLook(area);
        }
    }

    private void Demand(IEventSink events)
    {
        foreach (var id in attention.CalledRacks)
        {
            var area = areas.Of(id);
            var demand = parts.Demands[id.Index];
            facts.AskedBy(area);
            parts.Desks[id.Index].Look(facts.Now, area.Agenda);
            demand.Update(facts, demands, area.Agenda, events);
            facts.About(id) = RackFacts.Of(Site[id], demand);
            parts.Senses[id.Index].Look(facts, area.Agenda);
            facts.About(id) = facts.About(id) with { Fill = parts.Senses[id.Index].Fill };
        }
    }

    private void Look(IEventSink events)
    {
        if (attention.IsEverybodyCalled)
        {
            parts.ProofTests.PutRight(facts.Now.Monotonic);
        }

        parts.Interlocks.Look(attention, facts, events);
        parts.ProofTestDesk.Look(attention, facts, events);
        foreach (var rack in attention.CalledRacks)
        {
            var isStopped = parts.Desks[rack.Index].IsStopped;
            foreach (var load in areas.Of(rack).Loads)
            {
                var wish = isStopped
                    ? new Demand(load.SafeState, DemandCause.Stopped, default)
                    : parts.ProofTestDesk.Wish(load, demands[load.Id.Index]);
                decisions[load.Id.Index] = new Decision(wish, Forbidder: null, SafeStater: null);
            }

            parts.Interlocks.Object(rack, decisions);
        }
    }

    private void Admit()
    {
        foreach (var circuit in attention.CalledCircuits)
        {
            var area = areas.Of(circuit);
            parts.Admission.Call(circuit, parts.Interlocks.KeepsQuiet(area), parts.Interlocks.CurrentFactor(area));
        }

        foreach (var rack in attention.CalledRacks)
        {
            foreach (var load in areas.Of(rack).Loads)
            {
                ref readonly var decision = ref decisions[load.Id.Index];
                var wish = decision.SafeStater is null ? decision.Demand.State : load.SafeState;
                parts.Admission.Want(load, wish == SwitchState.On && decision.Forbidder is null);
            }
        }

        parts.Admission.Admit(facts);
    }

    private void Command(IEventSink events)
    {
        foreach (var circuit in parts.Admission.Admitted)
        {
            foreach (var load in areas.Of(circuit).Loads)
            {
                Command(load, events);
            }
        }
    }

    private void Command(Load load, IEventSink events)
    {
        var isOn = parts.Admission.Result(load.Id).Outcome == AdmissionOutcome.Admitted;
        var state = isOn ? SwitchState.On : SwitchState.Off;
        Invariant.Holds(!isOn || decisions[load.Id.Index].Forbidder is null, "a forbidden load is off in the same scan");
        if (state == commands[load.Id])
        {
            return;
        }

        commands[load.Id] = state;

        facts.NoteSwitching(areas.Of(load.Circuit));

        // The circuit calls its racks.
        areas.Of(load.Circuit).Agenda.Add(facts.Now.Monotonic);
        var why = Words.Why(load, state, decisions[load.Id.Index]);
        events.Take(new ControlEvent(facts.Now, EventKind.Load, load.Name, isOn ? "on" : "off", why.Summary));
    }

    private void Tell(IEventSink events)
    {
        parts.Alarms.Follow(parts.Interlocks.Moved, facts.Now, events);
        if (attention.IsEverybodyCalled)
        {
            parts.Alarms.FindDue();
        }

        var due = MonotonicTime.Earlier(attention.Earliest, parts.Admission.Earliest);
        NextChange = concernedAll ? facts.Now.Monotonic : MonotonicTime.Earlier(due, parts.Alarms.Due);
    }
}
