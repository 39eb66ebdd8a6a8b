using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads a whole scenario, once its site and its start are known.</summary>
internal sealed class ScenarioMapping : Mapping<Scenario>
{
    private const int MostEvents = 1000;
    private const int MostExpectations = 200;
    private const int MostRoomPoints = 48;
    private readonly Site site;
    private readonly string file;
    private readonly Key<string> about = Key.Required("about", new SentenceKind(), "What the scenario proves.");
    private readonly Key<string> rackFile = Key.Required("rack-file", new PathKind(), "The rack file, as seen from the scenario.");
    private readonly Key<Duration> length = Key.Required("length", new DurationKind("1 min", "366 d", ""), "How long it runs.");
    private readonly Key<BreakerEdge> breakers = Key.Defaulted(
        "breakers", new ChoiceKind<BreakerEdge>([("fast", BreakerEdge.Fast), ("slow", BreakerEdge.Slow)]), "fast",
        "Whether breakers and ground-fault protection open as early or as late as their standards let them.");

    private readonly Key<ImmutableArray<AcceptedHazard>> accepts = Key.Optional(
        "accepts", new ListKind<AcceptedHazard>(new AcceptanceMapping(), "hazard", 20),
        "Hazards that software alone cannot prevent here, each with the wired part that does.");

    private readonly Key<PlantStart> found = Key.Optional(
        "found", new FoundMapping(), "How the rack is found at the start: its water, its crop, where it stands.");

    private readonly Key<ImmutableArray<RoomPoint>> room = Key.Optional(
        "room", new ListKind<RoomPoint>(new RoomPointMapping(), "point", MostRoomPoints), "The air of the room over every day.");

    private readonly Key<Instant> start;
    private readonly Key<ImmutableArray<ImmutableList<ScenarioEvent>>> events;
    private readonly Key<ImmutableArray<Expectation>> expect;

    public ScenarioMapping(string file, Site site, Instant begin, ImmutableArray<string> eventNames)
    {
        this.file = file;
        this.site = site;
        var names = new SiteNames(site);
        var time = new ScenarioTimeKind(site.Zone, begin);
        start = Key.Required("start", new LocalMomentKind(site.Zone), "Local date and time at which it begins.");
        events = Key.Optional(
            "events", new ListKind<ImmutableList<ScenarioEvent>>(new EventMapping(names, time), "event", MostEvents),
            "What happens from outside.");
        expect = Key.Required(
            "expect",
            new ListKind<Expectation>(
                new ExpectationMapping(new StatementMapping(names, eventNames), time), "expectation", MostExpectations),
            "What must hold.");
    }

    public override string Name => "scenario";

    public override string Doc => "A run to be made and what must hold in it.";

    public override ImmutableArray<Key> Keys => [about, rackFile, start, length, breakers, found, room, events, expect, accepts];

    protected override Scenario? Build(MappingReader keys)
    {
        var runs = keys.Get(length);
        var happenings = (keys.FindValue(events) ?? []).SelectMany(list => list).OrderBy(happening => happening.At).ToImmutableArray();
        if (happenings.Where(happening => happening is not (RackMends or ControllerComes)).Any(happening => happening.At >= runs))
        {
            keys.Refuse(events, "an event comes after the end of the run", "move it, or make `length` longer");
            return null;
        }

        var points = (keys.FindValue(room) ?? []).OrderBy(point => point.At).ToImmutableArray();
        if (points.Zip(points.Skip(1)).Any(pair => pair.First.At == pair.Second.At))
        {
            keys.Refuse(room, "two points of the room's day are at the same time", "keep one of them");
            return null;
        }

        return new Scenario
        {
            Name = Path.GetFileNameWithoutExtension(file),
            About = keys.Get(about),
            File = file,
            RackFile = keys.Get(rackFile),
            Site = site,
            Start = keys.Get(start),
            Length = runs,
            Found = (keys.Find(found) ?? PlantStart.Default) with { Breakers = keys.Get(breakers) },
            Room = points.IsEmpty ? null : new RoomProfile(points),
            Events = happenings,
            Expectations = keys.Get(expect),
            Accepts = keys.FindValue(accepts) ?? [],
        };
    }
}

/// <summary>Reads one accepted hazard.</summary>
internal sealed class AcceptanceMapping : Mapping<AcceptedHazard>
{
    private readonly Key<HazardKind> hazard = Key.Required(
        "hazard", new ChoiceKind<HazardKind>([.. Enum.GetValues<HazardKind>().Select(kind => (HazardWords.Key(kind), kind))]),
        "Which hazard may show.");

    private readonly Key<string> backstop = Key.Required(
        "backstop", new SentenceKind(), "The wired part that keeps it from hurting.");

    public override string Name => "accepted hazard";

    public override string Doc => "A hazard that software alone cannot prevent here.";

    public override ImmutableArray<Key> Keys => [hazard, backstop];

    protected override AcceptedHazard Build(MappingReader keys) => new(keys.Get(hazard), keys.Get(backstop));
}
