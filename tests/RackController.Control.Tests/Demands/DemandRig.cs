using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Demands;

/// <summary>Runs the demands of the first rack of a site in virtual time. Every load gets what it would like, unless a test
/// forbids the pump. Scans fall on a grid of 100 ms; between them it may leap to what the agenda says.</summary>
internal sealed class DemandRig : IEventSink
{
    public static readonly Duration Grid = Duration.FromMilliseconds(100);

    private readonly Agenda agenda = new();
    private readonly RelayCommands commands;
    private readonly Demand[] demands;
    private readonly Facts facts;
    private readonly Site site;
    private bool commandChanged;
    private bool hasScanned;

    public DemandRig(Site site, Instant wall, bool trusted = true, ControlMemory? memory = null)
    {
        this.site = site;
        Now = new Moment(MonotonicTime.FromMilliseconds(50_000), wall, trusted);
        var areas = new Areas(site);
        commands = new RelayCommands(site);
        demands = new Demand[site.Loads.Length];
        Demand = new RackDemand(site, new RackId(0), new MemoryReader(memory, Now), Now, []);
        facts = new Facts(site, areas, [], new ProofTestLog(site, areas, Demand.Clock, new MemoryReader(null, Now), Now, []), Now);
        facts.AskedBy(areas.Of(new RackId(0)));
    }

    public RackDemand Demand { get; }

    public Moment Now { get; private set; }

    public Facts Facts => facts;

    public List<ControlEvent> Events { get; } = [];

    /// <summary>Every change of a demand: when, of which load, to what and why.</summary>
    public List<(Instant At, LoadId Load, Demand Demand)> Changes { get; } = [];

    /// <summary>Whether the pump may run at a moment.</summary>
    public Func<Moment, bool> PumpMayRun { get; set; } = _ => true;

    /// <summary>When that may change next, as an interlock would name it on the agenda.</summary>
    public Func<MonotonicTime, MonotonicTime> PermissionChanges { get; init; } = _ => MonotonicTime.Never;

    /// <summary>A load that is never told on.</summary>
    public string? Forbidden { get; set; }

    public MonotonicTime Earliest => agenda.Earliest;

    public ReadOnlySpan<Demand> Demands => demands;

    /// <summary>When the next flood runs, as it is told.</summary>
    public Instant NextFlood
    {
        get
        {
            List<DueNext> due = [];
            Demand.AddDueNext(due, demands, Now);
            return due.Single(each => each.What == "flood").At;
        }
    }

    public Demand this[string load] => demands[Id(load).Index];

    public LoadId Id(string load) => site.Loads.Single(each => each.Name == load).Id;

    public IEnumerable<Instant> When(string what) => Events.Where(each => each.What == what).Select(each => each.At.Wall);

    /// <summary>When a load's demand came into a state.</summary>
    public IEnumerable<Instant> Comes(string load, SwitchState state)
    {
        var last = SwitchState.Off;
        foreach (var change in Changes.Where(change => change.Load == Id(load)))
        {
            if (change.Demand.State != last && change.Demand.State == state)
            {
                yield return change.At;
            }

            last = change.Demand.State;
        }
    }

    public void Take(ControlEvent happened) => Events.Add(happened);

    public ControlMemory Save()
    {
        var writer = new MemoryWriter(Now, expected: 0);
        Demand.Save(writer);
        return writer.ToMemory();
    }

    /// <summary>Moves the wall clock without moving the monotonic one.</summary>
    public void StepWall(Duration by) => Now = Now with { Wall = Now.Wall + by };

    public void Trust(bool trusted) => Now = Now with { WallTrusted = trusted };

    /// <summary>Scans until a length of monotonic time has passed; leaps over scans at which nothing can change.</summary>
    public void Run(Duration length, bool leap = true)
    {
        var end = Now.Monotonic + length;
        Scan();
        while (Now.Monotonic < end)
        {
            var next = leap && !commandChanged ? MonotonicTime.Earlier(agenda.Earliest, end) : Now.Monotonic;
            var grids = Math.Max(1, (long)Math.Ceiling((next - Now.Monotonic) / Grid));
            Scan(Grid * grids);
        }
    }

    public void RunUntil(Instant wall, bool leap = true) => Run(wall - Now.Wall, leap);

    /// <summary>The next scan, a step of the grid after the one before.</summary>
    public void Scan() => Scan(Grid);

    private void Scan(Duration later)
    {
        if (hasScanned)
        {
            Now = new Moment(Now.Monotonic + later, Now.Wall + later, Now.WallTrusted);
        }

        hasScanned = true;
        facts.Begin(Now, ScanConditions.Good, commands);
        agenda.Begin(Now);
        Span<Demand> before = [.. demands];
        Demand.Update(facts, demands, agenda, this);
        agenda.Add(PermissionChanges(Now.Monotonic));
        Command();
        foreach (var load in site.Loads)
        {
            var (was, demand) = (before[load.Id.Index], demands[load.Id.Index]);
            if (was.State != demand.State || was.Cause != demand.Cause)
            {
                Changes.Add((Now.Wall, load.Id, demand));
            }
        }
    }

    private void Command()
    {
        commandChanged = false;
        foreach (var load in site.Loads)
        {
            var allowed = load.Kind == LoadKind.Pump ? PumpMayRun(Now) : load.Name != Forbidden;
            var state = demands[load.Id.Index].State == SwitchState.On && allowed ? SwitchState.On : SwitchState.Off;
            commandChanged |= commands[load.Id] != state;
            commands[load.Id] = state;
        }
    }
}
