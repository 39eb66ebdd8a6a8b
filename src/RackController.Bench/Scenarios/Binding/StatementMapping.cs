using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads a statement: one key says what it is about, one says what is the case with it.</summary>
internal sealed class StatementMapping : Mapping<Statement>
{
    private readonly Key<LoadId> load;
    private readonly Key<RackId> rack;
    private readonly Key<TierPlace> tier;
    private readonly Key<CircuitId> circuit;
    private readonly Key<string> happens;
    private readonly Key<string> alarm = Optional("alarm", new AlarmKeyKind(orAny: true), "The key of an alarm.");
    private readonly Key<string> reports = Optional("event", new TextKind("the subject of an event", ""), "The subject of an event.");
    private readonly Key<bool> controller = Optional(
        "controller", new ChoiceKind<bool>([("running", true), ("away", false)]), "Whether the controller runs.");

    private readonly Key<string> state = Optional("is", new TextKind("a state", ""), "`on` or `off` of a load; the state of an alarm.");
    private readonly Key<bool> powered = Optional("powered", new FlagKind(), "Whether a load really draws power.");
    private readonly Key<string> what = Optional("what", new TextKind("what happens", ""), "What an event says.");
    private readonly Key<FloodPhase> flood = Optional("flood", Phases(), "Where a rack's flood cycle is.");
    private readonly Key<Comparison> runs = Compare("runs", Dimensions.Time, "1000 d", 1 / 60.0, "Unbroken run of a load.");
    private readonly Key<Comparison> spilled = Compare(
        "spilled", Dimensions.Volume, "100000 L", 1, "Water that a rack lost onto the floor, beyond its drip tray.");
    private readonly Key<Comparison> reservoir = Compare("reservoir", Dimensions.Volume, "100000 L", 1, "Water in a rack's reservoir.");
    private readonly Key<Comparison> depth = Compare("depth", Dimensions.Length, "10 m", 1, "Depth of water in a tier's tray.");
    private readonly Key<Comparison> air = Compare("air", Dimensions.Temperature, "100 °C", 1, "Air temperature at a tier.");
    private readonly Key<Comparison> current = Compare("current", Dimensions.Current, "1000 A", 1, "Current of a circuit.");
    private readonly Key<Comparison> lit = Compare("lit", Dimensions.Time, "25 h", 1 / 3600.0, "Light of a tier in a whole day.");
    private readonly Key<Comparison> dailyLight = Compare(
        "daily-light", ScenarioDimensions.DailyLight, "200 mol/m2/d", 1, "Daily light integral of a tier.");

    private readonly Key<Comparison> oxygen = Compare(
        "oxygen", ScenarioDimensions.Concentration, "50 mg/L", 1, "Oxygen dissolved in a rack's reservoir.");

    private readonly Key<Comparison> conductivity = Compare(
        "conductivity", ScenarioDimensions.Conductivity, "100 mS/cm", 1, "Electrical conductivity of a rack's reservoir.");

    private readonly Key<Comparison> water = Compare("water", Dimensions.Temperature, "100 °C", 1, "Temperature of a rack's water.");
    private readonly Key<Comparison> humidity = Compare("humidity", Dimensions.Percentage, "100 %", 1, "Humidity of the air at a tier.");
    private readonly Key<Comparison> vapourDeficit = Compare(
        "vapour-deficit", ScenarioDimensions.VapourPressure, "20 kPa", 1, "Vapour pressure deficit of the air at a tier.");

    private readonly Key<Comparison> floods = Optional(
        "floods", new ComparisonKind(new NumberKind("a count", 0, 1000), 1), "Floods of a rack in a whole day.");

    public StatementMapping(SiteNames names, ImmutableArray<string> eventNames)
    {
        load = Optional("load", names.Load, "A load.");
        rack = Optional("rack", names.Rack, "A rack.");
        tier = Optional("tier", names.Tier, "A tier.");
        circuit = Optional("circuit", names.Circuit, "A circuit.");
        happens = Optional(
            "happens", new ChoiceKind<string>([(Happens.Start, Happens.Start), .. eventNames.Select(name => (name, name))]),
            "The name of an event of this scenario, or `start`.");
    }

    public override string Name => "statement";

    public override string Doc => "Something that can be true of a run at a moment.";

    public override ImmutableArray<Key> Keys =>
    [
        load, rack, tier, circuit, alarm, happens, reports, controller,
        state, powered, what, flood, runs, spilled, reservoir, oxygen, conductivity, water, depth, air, humidity, vapourDeficit,
        current, lit, dailyLight, floods,
    ];

    protected override Statement? Build(MappingReader keys)
    {
        Key[] subjects = [load, rack, tier, circuit, alarm, happens, reports, controller];
        var subject = subjects.Where(keys.IsWritten).ToList();
        if (subject.Count != 1)
        {
            keys.Complaints.Refuse(
                keys.Place, subject.Count == 0 ? "the statement is about nothing" : "the statement is about more than one thing",
                $"name one of {string.Join(", ", subjects.Select(key => key.Name))}");
            return null;
        }

        var statement = AboutLoad(keys) ?? AboutRack(keys) ?? AboutTier(keys) ?? AboutTheRest(keys);
        var expected = Keys.Count(key => keys.IsWritten(key)) - 1;
        if (statement is null && States(subject[0]) is { } known && keys.Find(state) is { } word)
        {
            keys.Refuse(state, $"`is` is `{word}`", $"write {known}");
            return null;
        }

        if (statement is null || expected > (statement is Happens or ControllerRuns ? 0 : 1))
        {
            keys.Refuse(
                subject[0], $"the statement does not say one thing of its {subject[0].Name}",
                $"give {Completions(subject[0])} beside it");
            return null;
        }

        return statement;
    }

    private static Key<Comparison> Compare(string name, Dimension dimension, string most, double scale, string doc) =>
        Optional(name, new ComparisonKind(new QuantityKind(dimension, $"0 {most.Split(' ')[1]}", most), scale), doc);

    private static Key<T> Optional<T>(string name, Kind<T> kind, string doc) => Key.Optional(name, kind, doc);

    private static ChoiceKind<FloodPhase> Phases() =>
        new([.. Enum.GetValues<FloodPhase>().Select(phase => (phase.ToString().ToLowerInvariant(), phase))]);

    private string Completions(Key subject) => subject switch
    {
        _ when subject == load => "`is: on`, `is: off`, `powered` or `runs`",
        _ when subject == rack => "`flood`, `spilled`, `reservoir`, `oxygen`, `conductivity`, `water` or `floods`",
        _ when subject == tier => "`depth`, `air`, `humidity`, `vapour-deficit`, `lit` or `daily-light`",
        _ when subject == circuit => "`current`",
        _ when subject == alarm => "`is: active` or `is:` with one of the alarm states",
        _ when subject == reports => "`what`",
        _ => "nothing",
    };

    // What `is:` may say, where it says anything.
    private string? States(Key subject) => subject == load ? "`on` or `off`"
        : subject == alarm ? string.Join(" or ", AlarmStates.Keys.Order(StringComparer.Ordinal).Select(word => $"`{word}`"))
        : null;

    private Statement? AboutLoad(MappingReader keys)
    {
        if (keys.FindValue(load) is not { } id)
        {
            return null;
        }

        return keys.Find(state) switch
        {
            "on" => new LoadIsTold(id, SwitchState.On),
            "off" => new LoadIsTold(id, SwitchState.Off),
            _ when keys.FindValue(powered) is { } isPowered => new LoadIsPowered(id, isPowered),
            _ => Measured(keys, runs, new UnbrokenRun(id)),
        };
    }

    private Statement? AboutRack(MappingReader keys) => keys.FindValue(rack) is not { } id
        ? null
        : keys.FindValue(flood) is { } phase
            ? new FloodIs(id, phase)
            : Measured(keys, spilled, new Spilled(id)) ?? Measured(keys, reservoir, new ReservoirVolume(id))
                ?? Measured(keys, oxygen, new DissolvedOxygen(id)) ?? Measured(keys, conductivity, new Conductivity(id))
                ?? Measured(keys, water, new WaterTemperature(id)) ?? Measured(keys, floods, new FloodsOfDay(id));

    private Measures? AboutTier(MappingReader keys) => keys.Find(tier) is not { } place
        ? null
        : Measured(keys, depth, new TrayDepth(place.Rack, place.Number))
            ?? Measured(keys, air, new AirTemperature(place.Rack, place.Number))
            ?? Measured(keys, humidity, new AirHumidity(place.Rack, place.Number))
            ?? Measured(keys, vapourDeficit, new VapourDeficit(place.Rack, place.Number))
            ?? Measured(keys, lit, new LitHoursOfDay(place.Rack, place.Number))
            ?? Measured(keys, dailyLight, new DailyLightIntegral(place.Rack, place.Number));

    private Statement? AboutTheRest(MappingReader keys)
    {
        if (keys.FindValue(circuit) is { } id)
        {
            return Measured(keys, current, new CircuitCurrent(id));
        }

        if (keys.Find(alarm) is { } key)
        {
            return AlarmStates.TryGetValue(keys.Find(state) ?? "", out var asked) ? new AlarmIs(key, asked) : null;
        }

        return keys.Find(happens) is { } name ? new Happens(name)
            : keys.Find(reports) is { } subject ? keys.Find(what) is { } said ? new Reports(subject, said) : null
            : keys.FindValue(controller) is { } isRunning ? new ControllerRuns(isRunning)
            : null;
    }

    private static ImmutableDictionary<string, AlarmState?> AlarmStates { get; } = Enum.GetValues<AlarmState>()
        .ToImmutableDictionary(state => state.InWords(), state => (AlarmState?)state).Add("active", null);

    private static Measures? Measured(MappingReader keys, Key<Comparison> key, Measure measure) =>
        keys.Find(key) is { } comparison ? new Measures(measure, comparison) : null;
}
