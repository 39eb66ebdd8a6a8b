using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// Runs a controller against a simulated rack in virtual time. Scans fall on the grid that the site's scan period sets;
/// between them the run leaps to the earliest moment at which anything could change: by the controller's own word, at a level or a
/// change that the rack comes to, by the scenario, or at the end of a local day.
/// </summary>
internal sealed class VirtualRun
{
    // Long enough to cost nothing, short enough that curves of a still rack have their points.
    private static readonly Duration LongestLeap = Duration.FromHours(1);

    // Shallower than this, no eye sees a tray's water move on a chart.
    private const double WetMm = 0.5;

    private readonly Site site;
    private readonly SimulatedSite plant;
    private readonly VirtualClock clock;
    private readonly Controller controller;
    private readonly Observed observed;
    private readonly RoomSchedule room;
    private readonly LoadLedger loads;
    private readonly DayKeeper days;
    private readonly ImmutableArray<ScenarioEvent> events;
    private readonly bool leaps;
    private int nextEvent;

    /// <summary>Prepares a run that begins at a true time.</summary>
    /// <param name="site">The site.</param>
    /// <param name="start">When it begins.</param>
    /// <param name="events">What happens from outside, in order.</param>
    /// <param name="found">How the rack is found.</param>
    /// <param name="profile">How the air of the room runs over the day; null for a room that stays as it is found.</param>
    /// <param name="leaps">Whether to leap; otherwise every scan of the grid is made, which takes far longer and must come
    /// to the same.</param>
    public VirtualRun(
        Site site, Instant start, ImmutableArray<ScenarioEvent> events, PlantStart found, RoomProfile? profile, bool leaps = true)
    {
        this.site = site;
        this.events = events;
        this.leaps = leaps;
        clock = new VirtualClock(start);
        plant = new SimulatedSite(site, found);
        room = new RoomSchedule(profile, site, plant, clock);
        loads = new LoadLedger(site);
        days = new DayKeeper(site, start);
        observed = new Observed(site, plant, loads, Log);
        controller = new Controller(site, plant, clock, Log);
        foreach (var fails in events.OfType<RackFails>())
        {
            plant.Inject(fails.Fault);
        }
    }

    /// <summary>The longest time that water on the move is left unlooked at: for curves and records, since nothing is decided
    /// differently by it.</summary>
    public Duration LookAtMovingWaterEvery { get; init; } = LongestLeap;

    /// <summary>Who comes by and acts on what is to be seen; null where nobody does.</summary>
    public IVisitor? Visitor { get; init; }

    /// <summary>Has the rack watch for levels, so that a leap ends where one is passed.</summary>
    public void Watch(IEnumerable<WatchedLevel> levels)
    {
        foreach (var level in levels)
        {
            plant.Watch(level.Rack, level.Quantity, level.TierNumber, level.Level);
        }
    }

    /// <summary>What has happened so far.</summary>
    public EventLog Log { get; } = new();

    /// <summary>What is true now.</summary>
    public IObserved Now => observed;

    /// <summary>The simulated site, for measures that no statement needs.</summary>
    public SimulatedSite Plant => plant;

    /// <summary>Counts of each load.</summary>
    public LoadLedger Loads => loads;

    /// <summary>The controller in charge; null while its board has no power.</summary>
    public RackControl? Control => controller.Running;

    /// <summary>How many scans were made.</summary>
    public long Scans { get; private set; }

    /// <summary>Counts a flood for the day under way.</summary>
    public void CountFlood(RackId rack) => days.CountFlood(rack);

    /// <summary>Begins the run: the board boots, and the first scan is made.</summary>
    public void Begin()
    {
        controller.Boot();
        foreach (var level in controller.Running!.Levels)
        {
            plant.Watch(level.Sensor, level.Value);
        }

        Look([Happens.Start], scans: true);
    }

    /// <summary>Goes on to the next moment worth looking at, at most to an end.</summary>
    /// <param name="end">Not beyond here.</param>
    /// <returns>Whether the end was not yet reached.</returns>
    public bool Step(MonotonicTime end)
    {
        if (clock.Bench >= end)
        {
            return false;
        }

        var next = MonotonicTime.Earlier(end, Next(end, out var isNews));
        Invariant.Holds(next > clock.Bench, "whoever asks to be shown a moment asks for one to come, or a run would never end");
        clock.AdvanceTo(next);
        plant.AdvanceTo(clock.Bench);
        Look([], scans: isNews || next == end);
        return true;
    }

    // Where nothing is due and there is no news, curves and records are glanced at, and nobody need scan.
    private MonotonicTime Next(MonotonicTime end, out bool isNews)
    {
        isNews = true;
        var soonest = OnGrid(clock.Bench + Duration.FromNanoseconds(1));
        if (!leaps || controller.HasNews)
        {
            return soonest;
        }

        var due = Due();
        if (due <= soonest)
        {
            return soonest;
        }

        var glance = clock.Bench + (WaterMoves ? LookAtMovingWaterEvery : LongestLeap);
        if (observed.LookNextBy < end - MonotonicTime.Zero)
        {
            glance = MonotonicTime.Earlier(glance, MonotonicTime.Zero + observed.LookNextBy);
        }

        var next = OnGrid(MonotonicTime.Earlier(due, glance));
        isNews = plant.AdvanceToNews(MonotonicTime.Earlier(end, next)) || due <= next;
        return OnGrid(plant.Reached);
    }

    private MonotonicTime Due()
    {
        var due = MonotonicTime.Earlier(controller.NextChange, clock.Bench + (days.EndsAt - clock.True));
        due = MonotonicTime.Earlier(due, room.NextAt);
        due = MonotonicTime.Earlier(due, Visitor?.ComesAt ?? MonotonicTime.Never);
        return nextEvent < events.Length ? MonotonicTime.Earlier(due, ScanBeforeOrAt(events[nextEvent])) : due;
    }

    // The last scan before an event is the one that read the inputs last, should they fail from then on.
    private MonotonicTime ScanBeforeOrAt(ScenarioEvent happening)
    {
        var at = MonotonicTime.Zero + happening.At;
        var before = OnGrid(at) + -site.Scan.Period;
        return before > clock.Bench ? before : at;
    }

    private bool WaterMoves
    {
        get
        {
            foreach (var rack in plant.Racks)
            {
                if (rack.PumpTurns)
                {
                    return true;
                }

                foreach (var tier in rack.Tiers)
                {
                    if (tier.DepthMm > WetMm)
                    {
                        return true;
                    }
                }
            }

            return false;
        }
    }

    private MonotonicTime OnGrid(MonotonicTime time)
    {
        var period = site.Scan.Period.ToInt64Nanoseconds();
        return new MonotonicTime((time.Nanoseconds + period - 1) / period * period);
    }

    private void Look(ImmutableArray<string> happened, bool scans)
    {
        Log.Begin(clock.Elapsed, clock.True);
        if (IsEventDue)
        {
            happened = happened.AddRange(TakeEvents());
        }

        if (Visitor is not null && Visitor.ComesAt <= clock.Bench)
        {
            happened = happened.AddRange(Visitor.Visit(this).Select(Take));
        }

        room.Look();
        if (scans)
        {
            controller.Scan();
            Scans++;
        }

        observed.MoveTo(clock, controller.Running, happened);
        loads.MoveTo(clock.Elapsed);
        foreach (var load in site.Loads)
        {
            loads.Note(load.Id, observed.IsPowered(load.Id));
        }

        observed.DayClosed = days.CloseIfOver(clock.True, loads);
    }

    private bool IsEventDue => nextEvent < events.Length && events[nextEvent].At <= clock.Elapsed;

    private IEnumerable<string> TakeEvents()
    {
        while (IsEventDue)
        {
            yield return Take(events[nextEvent++]);
        }
    }

    private string Take(ScenarioEvent happening)
    {
        Apply(happening);
        Log.TakeScenario(happening.Name, EventWords.Of(site, happening));
        return happening.Name;
    }

    private void Apply(ScenarioEvent happening)
    {
        switch (happening)
        {
            case PersonAsks asks:
                controller.Ask(asks.Request);
                break;
            case ClockSteps steps:
                clock.Step(steps.By);
                break;
            case ClockSetRight:
                clock.SetRight();
                clock.Trust(true);
                break;
            case ClockLosesTrust:
                clock.Trust(false);
                break;
            case ControllerGoes:
                controller.LosePower();
                break;
            case ControllerComes comes:
                Boot(comes);
                break;
            case RoomChanges changes:
                room.Stop();
                plant.SetRoom(changes.AirC, changes.HumidityPercent, clock.Bench);
                break;
            default:
                Invariant.Holds(happening is RackFails or RackMends, "every kind of event is known; faults time themselves");
                break;
        }
    }

    private void Boot(ControllerComes comes)
    {
        clock.Boot();
        clock.SetRight();
        clock.Trust(comes.Wall is null);
        if (comes.Wall is { } wall)
        {
            clock.Set(wall);
        }

        controller.Boot();
    }
}
