using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// What every load of one rack would like to be, scan after scan: lights by photoperiod, pump and valves by the flood
/// cycle, fans and aerator by their run plans. It is a wish that knows nothing of interlocks or circuits. A steady scan
/// allocates nothing.
/// </summary>
internal sealed class RackDemand
{
    private readonly Site site;
    private readonly Rack rack;
    private readonly ScheduleClock clock;
    private readonly TiersInUse tiers;
    private readonly FloodTimetable timetable;
    private readonly FloodCycle cycle;
    private readonly WaterDemand water;
    private readonly ImmutableArray<TierLight> lights;
    private readonly ImmutableArray<RunDemand> runs;
    private long ownVersion;

    /// <summary>Takes up the schedule of one rack where memory left it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rackId">The rack.</param>
    /// <param name="memory">What was remembered.</param>
    /// <param name="start">The moment of taking charge.</param>
    /// <param name="levels">Takes every value of a measuring sensor at which a demand may change.</param>
    public RackDemand(Site site, RackId rackId, MemoryReader memory, Moment start, ICollection<SensorLevel> levels)
    {
        this.site = site;
        rack = site[rackId];
        var key = $"{rack.Name}/demand";
        lights = [.. rack.Tiers.Select(LightOf).OfType<TierLight>()];
        clock = new ScheduleClock($"{key}/clock", memory, start, () => FirstLight(start.Wall));
        tiers = new TiersInUse(rack, key, memory);
        timetable = new FloodTimetable(key, site, rack, memory, start);
        cycle = new FloodCycle(site, rack, key, memory, start.Monotonic, levels);
        water = new WaterDemand(site, rack);
        runs =
        [
            .. rack.Schedule.Runs.Select(plan => new RunDemand(plan, site[plan.Load].SafeState, start.Monotonic, levels)),
        ];
        Invariant.Holds(
            site.Loads.All(load => load.Rack != rackId || Asks(load.Id)), "every load of a rack has its place in the schedule");
        Invariant.Holds(
            rack.Schedule.Runs.OfType<RunByReading>().All(run => site[run.Sensor].Rack == rackId),
            "a load runs by a reading of its own rack");
    }

    /// <summary>The time that the schedule reads.</summary>
    public ScheduleClock Clock => clock;

    /// <summary>The number of the last flood of this controller whose fill was not cut short; 0 before the first.</summary>
    public long FilledFlood => cycle.FilledFlood;

    /// <summary>Where the flood cycle is.</summary>
    public FloodPhase Phase => cycle.Phase;

    /// <summary>How many floods have begun, ever; rises by one when a flood starts to fill.</summary>
    public long FloodNumber => cycle.Number;

    /// <summary>Whether the last fill took as long as it may without every tray reading full. False after the next one that
    /// does not, and always for fills by time.</summary>
    public bool FillHitItsLimit => cycle.FillHitItsLimit;

    /// <summary>Rises when something changed that <see cref="Save"/> must keep.</summary>
    public long MemoryVersion => ownVersion + clock.Version + timetable.Version + cycle.Version;

    /// <summary>Whether a tier takes part.</summary>
    /// <param name="number">A tier of the rack, 1 at the bottom.</param>
    public bool IsTierInUse(int number) => tiers[number];

    /// <summary>Takes a tier into or out of use.</summary>
    /// <param name="number">The tier asked for, 1 at the bottom.</param>
    /// <param name="inUse">Into use or out of it.</param>
    /// <param name="answer">What became of the request.</param>
    /// <returns>Whether the rack has such a tier.</returns>
    public bool TrySetTierInUse(int number, bool inUse, out string answer)
    {
        if (number < 1 || number > rack.Tiers.Length)
        {
            answer = $"{rack.Name} has no tier {number}; its tiers are 1 to {rack.Tiers.Length}";
            return false;
        }

        var changed = tiers.Set(number, inUse);
        ownVersion += changed ? 1 : 0;
        answer = $"tier {number} is {(changed ? "now" : "already")} {(inUse ? "in" : "out of")} use";
        return true;
    }

    /// <summary>Whether the next flood of the schedule is left out.</summary>
    public bool SkipsNextFlood => timetable.SkipsNext;

    /// <summary>Asks for one flood outside the schedule, which stays as it is.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="events">Where events go.</param>
    /// <param name="answer">What became of the request.</param>
    /// <returns>Whether a flood follows from it.</returns>
    public bool TryFloodNow(in Moment now, IEventSink events, out string answer)
    {
        if (tiers.Count == 0)
        {
            answer = "every tier is out of use";
            return false;
        }

        if (cycle.IsOwed || Phase is FloodPhase.Filling or FloodPhase.Soaking)
        {
            answer = cycle.IsOwed ? "a flood already waits to begin" : "a flood is already under way";
            return false;
        }

        answer = Phase == FloodPhase.Draining
            ? "a flood follows as soon as the trays have drained"
            : "a flood begins as soon as the pump may start";
        cycle.Call("a person asked for a flood", now, events);
        return true;
    }

    /// <summary>Leaves out the flood that waits, or else the next one of the schedule.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="events">Where events go.</param>
    /// <param name="answer">What became of the request.</param>
    /// <returns>Whether there is a flood to leave out.</returns>
    public bool TrySkipNext(in Moment now, IEventSink events, out string answer)
    {
        if (!cycle.IsOwed)
        {
            return timetable.TrySkipNext(clock, now, out answer);
        }

        answer = "the flood that waits is left out";
        cycle.Drop("a person asked to leave it out", now, events);
        timetable.Settle();
        return true;
    }

    /// <summary>Answers what every load of the rack would like. The commands of this scan are facts of the next one, so
    /// whoever commands adds the next scan to the agenda when a command changed.</summary>
    /// <param name="facts">What this scan knows.</param>
    /// <param name="demands">Where answers go, by the index of the load on the site.</param>
    /// <param name="agenda">Takes the times at which an answer may change by itself.</param>
    /// <param name="events">Where events go.</param>
    public void Update(Facts facts, Span<Demand> demands, Agenda agenda, IEventSink events)
    {
        clock.Update(facts.Now, agenda);
        CallForFlood(facts.Now, events);
        if (cycle.Update(facts, tiers, agenda, events))
        {
            timetable.Began(facts.Now);
        }

        timetable.NameDue(clock, agenda);
        water.Update(facts, cycle, tiers, clock, timetable.NextFlood(clock), demands, agenda);
        foreach (var light in lights)
        {
            demands[light.Load.Index] = light.Update(clock, tiers[light.TierNumber], agenda);
        }

        foreach (var run in runs)
        {
            demands[run.Plan.Load.Index] = run.Update(facts, clock, agenda);
        }
    }

    /// <summary>Says a demand in words.</summary>
    /// <param name="demand">A demand of this rack, as of the last scan.</param>
    /// <param name="load">The load that it is for.</param>
    /// <param name="now">The time of the last scan.</param>
    public string Words(in Demand demand, LoadId load, MonotonicTime now)
    {
        var plan = rack.Schedule.Runs.FirstOrDefault(run => run.Load == load);
        return DemandWords.Of(demand, site[load], plan, site, clock, now, cycle.PhaseBegan);
    }

    /// <summary>Adds what the schedule does next, as of the last scan.</summary>
    /// <param name="due">Where to add it, in no order.</param>
    /// <param name="demands">The demands of the last scan.</param>
    /// <param name="now">The moment of the last scan.</param>
    public void AddDueNext(List<DueNext> due, ReadOnlySpan<Demand> demands, in Moment now)
    {
        foreach (var load in site.Loads)
        {
            var demand = demands[load.Id.Index];
            if (load.Rack == rack.Id && demand.Until != Instant.MinValue && load.Kind is not (LoadKind.Pump or LoadKind.Valve))
            {
                due.Add(new(load.Name, demand.State == SwitchState.On ? "off" : "on", ByWall(demand.Until, now)));
            }
        }

        if (Phase == FloodPhase.Soaking || (Phase == FloodPhase.Filling && rack.Schedule.Floods.Fill is FillForTime))
        {
            var ends = cycle.PhaseEnds + (Phase == FloodPhase.Filling ? rack.Schedule.Floods.Soak : Duration.Zero);
            due.Add(new(site[rack.Pump.Load].Name, "off", ByWall(clock.TimeAt(ends), now)));
        }

        if (tiers.Count > 0 && timetable.NextFlood(clock) is var next && next != Instant.MaxValue)
        {
            due.Add(new(rack.Name, "flood", ByWall(next, now)));
        }
    }

    /// <summary>Keeps what must be remembered.</summary>
    /// <param name="writer">Where to.</param>
    public void Save(MemoryWriter writer)
    {
        clock.Save(writer);
        tiers.Save(writer);
        timetable.Save(writer);
        cycle.Save(writer);
    }

    private void CallForFlood(in Moment now, IEventSink events)
    {
        var call = timetable.Update(clock, now);
        if (tiers.Count == 0 && (cycle.IsOwed || call.Runs))
        {
            cycle.Drop("every tier is out of use", now, events);
            timetable.Settle();
        }
        else if (call.Runs && !cycle.Call(call.Because!, now, events))
        {
            timetable.Settle();
        }
        else if (!call.Runs && !call.IsNothing)
        {
            events.Take(new ControlEvent(now, EventKind.Flood, rack.Name, FloodEvent.LeftOut, call.Because!));
        }
    }

    private TierLight? LightOf(Tier tier)
    {
        if (tier.Light is not { } load)
        {
            return null;
        }

        var photoperiod = rack.Schedule.Lights[tier.Number - 1] ?? new Photoperiod(LocalTime.Midnight, Duration.Zero);
        var stagger = rack.Schedule.LightStagger * (tier.Number - 1);
        return new TierLight(tier.Number, load, new LightCalendar(site.Zone, photoperiod, stagger));
    }

    private bool Asks(LoadId load) =>
        load == rack.Pump.Load
        || rack.Tiers.Any(tier => tier.Valve == load || tier.Light == load)
        || rack.Schedule.Runs.Any(plan => plan.Load == load);

    private Instant FirstLight(Instant around)
    {
        var date = around.InZone(site.Zone).Date;
        return lights.IsEmpty ? around : lights.Min(light => light.StartOn(date));
    }

    private Instant ByWall(Instant time, in Moment now) => now.Wall + (time - clock.TimeAt(now.Monotonic));
}
