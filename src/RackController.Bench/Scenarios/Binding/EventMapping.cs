using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads an event: <c>at</c> a time, either a <c>fault</c> of the rack, something that a person asks
/// (<c>ask</c>), something that becomes of the <c>clock</c>, of the <c>controller</c>,
/// or of the air of the <c>room</c>.</summary>
internal sealed class EventMapping : Mapping<ImmutableList<ScenarioEvent>>
{
    private readonly SiteNames names;
    private readonly Key<string> name = Key.Optional("name", new TextKind("a name", "\"`"), "What expectations call it.");
    private readonly Key<Duration> length = Key.Optional("for", new DurationKind("0 s", "366 d", ""), "How long it lasts.");
    private readonly Key<string> size = Key.Optional("size", new TextKind("an amount", ""), "How much, in the unit of the fault.");
    private readonly Key<string> alarm = Key.Optional("alarm", new AlarmKeyKind(orAny: false), "Which alarm is asked about.");
    private readonly Key<string> person = Key.Defaulted("person", new TextKind("a name", ""), "the grower", "Who asks.");
    private readonly Key<ClockChange> clock = Key.Optional("clock", new ClockChangeKind(), "What becomes of the board's wall clock.");
    private readonly Key<bool> controller = Key.Optional(
        "controller", new ChoiceKind<bool>([("off", false)]), "The board loses its power `for` a time, or for good.");

    private readonly Key<double> room = Key.Optional("room", RoomPointMapping.Air, "The air of the room is at this from now on.");
    private readonly Key<double> humidity = Key.Optional(
        "humidity", RoomPointMapping.Humidity, "With `room`: its relative humidity from now on. Without this it is that of the start.");


    private readonly Key<FaultKind> fault = Key.Optional(
        "fault", new ChoiceKind<FaultKind>([.. Enum.GetValues<FaultKind>().Select(kind => (FaultNames.Of(kind), kind))]),
        "What goes wrong on the rack.");

    private readonly Key<Duration> at;
    private readonly Key<Instant> wakes;
    private readonly Key<RequestKind> ask = Key.Optional("ask", RequestMaker.Kinds, "What a person asks the controller for.");
    private readonly Key<LoadId> load;
    private readonly Key<RackId> rack;
    private readonly Key<TierPlace> tier;
    private readonly Key<CircuitId> circuit;
    private readonly Key<SensorId> sensor;

    public EventMapping(SiteNames names, ScenarioTimeKind time)
    {
        this.names = names;
        at = Key.Required("at", time, "When.");
        wakes = Key.Optional(
            "wakes", new LocalMomentKind(names.Site.Zone),
            "What the wall clock of a board that boots says, with nothing to vouch for it. Without this it is right.");
        load = Key.Optional("load", names.Load, "Which load.");
        rack = Key.Optional("rack", names.Rack, "Which rack.");
        tier = Key.Optional("tier", names.Tier, "Which tier.");
        circuit = Key.Optional("circuit", names.Circuit, "Which circuit.");
        sensor = Key.Optional("sensor", names.Sensor, "Which sensor.");
    }

    public override string Name => "event";

    public override string Doc => "Something that happens to the run from outside.";

    public override ImmutableArray<Key> Keys =>
        [at, name, fault, ask, clock, controller, room, humidity, load, rack, tier, circuit, sensor, size, length, wakes, alarm, person];

    protected override ImmutableList<ScenarioEvent>? Build(MappingReader keys)
    {
        if (new Key[] { fault, ask, clock, controller, room }.Count(keys.IsWritten) != 1)
        {
            keys.Complaints.Refuse(
                keys.Place, "the event is of no kind", "give it one of `fault`, `ask`, `clock`, `controller` and `room`");
            return null;
        }

        return keys.FindValue(fault) is { } kind ? Fault(keys, kind)
            : keys.FindValue(ask) is { } request ? Ask(keys, request)
            : keys.Find(clock) is { } change ? Clock(keys, change)
            : keys.FindValue(room) is { } airC ? [Room(keys, airC)]
            : Controller(keys);
    }

    private ImmutableList<ScenarioEvent>? Fault(MappingReader keys, FaultKind kind)
    {
        var begins = keys.Get(at);
        if (!FaultSize.TryRead(keys, fault, size, FaultCatalogue.Entry(kind), out var amount))
        {
            return null;
        }

        var place = keys.Find(tier);
        var made = new Fault(
            kind, MonotonicTime.Zero + begins,
            keys.FindValue(length) is { } lasts ? MonotonicTime.Zero + begins + lasts : MonotonicTime.Never)
        {
            Size = amount,
            Rack = place?.Rack ?? keys.FindValue(rack),
            TierNumber = place?.Number,
            Circuit = keys.FindValue(circuit),
            Load = keys.FindValue(load),
            Sensor = keys.FindValue(sensor),
        };
        if (made.WrongFor(names.Site) is { } wrong)
        {
            keys.Refuse(fault, wrong, $"name the {FaultNames.PlaceOf(kind)} it happens to, and a size only where the fault has one");
            return null;
        }

        var calledBy = keys.Find(name) ?? $"{FaultNames.Of(kind)} {FaultNames.Where(names.Site, made)}".Trim();
        return made.Until == MonotonicTime.Never
            ? [new RackFails(begins, calledBy, made)]
            : [new RackFails(begins, calledBy, made), new RackMends(made.Until - MonotonicTime.Zero, $"end of {calledBy}")];
    }

    private ImmutableList<ScenarioEvent>? Ask(MappingReader keys, RequestKind kind)
    {
        var request = RequestMaker.Make(
            kind, keys.Get(person), keys.FindValue(rack), keys.Find(tier), keys.Find(alarm), keys.FindValue(length),
            keys.FindValue(sensor) is { } tested ? names.Site[tested].Name
            : keys.FindValue(load) is { } switched ? names.Site[switched].Name : null);
        if (request is null)
        {
            keys.Refuse(ask, "the request does not say enough", RequestMaker.Needs(kind));
            return null;
        }

        return [new PersonAsks(keys.Get(at), keys.Find(name) ?? RequestMaker.Word(kind), request)];
    }

    private ImmutableList<ScenarioEvent> Clock(MappingReader keys, ClockChange change)
    {
        var begins = keys.Get(at);
        var calledBy = keys.Find(name) ?? $"clock {change.Words}";
        return change.Kind switch
        {
            ClockChangeKinds.Right => [new ClockSetRight(begins, calledBy)],
            ClockChangeKinds.Untrusted => [new ClockLosesTrust(begins, calledBy)],
            ClockChangeKinds.Steps => [new ClockSteps(begins, calledBy, change.By)],
            _ => throw new InvariantBrokenException($"every change of a clock has its event, {change.Kind} too"),
        };
    }

    private RoomChanges Room(MappingReader keys, double airC) => new(
        keys.Get(at), keys.Find(name) ?? "room", airC, keys.FindValue(humidity) ?? PlantStart.Default.RoomHumidityPercent);

    private ImmutableList<ScenarioEvent> Controller(MappingReader keys)
    {
        var begins = keys.Get(at);
        var calledBy = keys.Find(name) ?? "controller off";
        return keys.FindValue(length) is { } away
            ? [new ControllerGoes(begins, calledBy), new ControllerComes(begins + away, $"end of {calledBy}", keys.FindValue(wakes))]
            : [new ControllerGoes(begins, calledBy)];
    }
}
