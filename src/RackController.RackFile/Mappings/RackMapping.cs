using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>A rack as written; null where something was refused.</summary>
internal sealed record RackPart
{
    public required Place Place { get; init; }

    public string? Name { get; init; }

    public required Place NamePlace { get; init; }

    public string? Circuit { get; init; }

    public required Place CircuitPlace { get; init; }

    /// <summary>Whether the circuit is written, sound or not.</summary>
    public required bool NamesCircuit { get; init; }

    public ReservoirPart? Reservoir { get; init; }

    public PumpPart? Pump { get; init; }

    public required SupplyPart? Supply { get; init; }

    public required DrainPart? Drain { get; init; }

    public DripTrayPart? DripTray { get; init; }

    /// <summary>Whether a drip tray is written, sound or not.</summary>
    public required bool HasDripTray { get; init; }

    public RackStand? Stand { get; init; }

    public WiredPart? Wired { get; init; }

    /// <summary>Whether what is wired is written, sound or not.</summary>
    public required bool HasWired { get; init; }

    public required TrayPart? Tray { get; init; }

    public required BranchPart? Branch { get; init; }

    public required ImmutableArray<TierPart> Tiers { get; init; }

    public RunnerPart? Aerator { get; init; }

    public required ImmutableArray<RunnerPart> Fans { get; init; }

    public required SensorsPart Sensors { get; init; }

    public SchedulePart? Schedule { get; init; }

    public LimitsPart? Limits { get; init; }

    public MeasuredPart? Measured { get; init; }

    /// <summary>What the grower wrote of the schedule; <see cref="Schedule"/> is that with what batches ask.</summary>
    public SchedulePart? ScheduleAsWritten { get; init; }

    public ForBatchesPart? ForBatches { get; init; }

    public UpkeepPart? Upkeep { get; init; }

    /// <summary>Its loads, in the order of the site: pump, aerator, fans, then tier by tier.</summary>
    public IEnumerable<LoadPart> Loads =>
        new[] { Pump?.Load, Aerator?.Load }
            .OfType<LoadPart>()
            .Concat(Fans.Select(fan => fan.Load))
            .Concat(Tiers.SelectMany(tier => tier.Loads));

    /// <summary>Whether no sensor of the rack or a tier was refused, so that what is missing is missing.</summary>
    public bool KnowsAllSensors => Tiers.Length > 0 && Sensors.IsComplete && Tiers.All(tier => tier.Sensors.IsComplete);

    /// <summary>Its sensors, those of its tiers last.</summary>
    public IEnumerable<SensorPart> AllSensors => Sensors.Sensors.Concat(Tiers.SelectMany(tier => tier.Sensors.Sensors));
}

/// <summary>Reads a rack.</summary>
internal sealed class RackMapping : Mapping<RackPart>
{
    /// <summary>No rack that a person can reach has more.</summary>
    internal const int MostTiers = 12;

    /// <summary>More air than any rack needs; a longer list is a slip.</summary>
    private const int MostFans = 12;

    private static readonly TrayMapping trayOfAll = new(ofAllTiers: true);
    private static readonly BranchMapping branchOfAll = new(ofAllTiers: true);
    private static readonly SupplyMapping supplyMapping = new();
    private static readonly DrainMapping drainMapping = new();
    private static readonly LimitsMapping limitsMapping = new();

    private static readonly Key<string> nameKey = Key.Required("name", Values.Name, "What it is called; unique on the site.");

    private static readonly Key<string> circuitKey = Key.Optional(
        "circuit", Values.Name, "The circuit that its loads draw from. Without it: the only circuit of the site.");

    private static readonly Key<ReservoirPart> reservoirKey = Key.Required("reservoir", new ReservoirMapping(), "The tank.");

    private static readonly Key<PumpPart> pumpKey = Key.Required("pump", new PumpMapping(), "The pump.");

    private static readonly Key<SupplyPart> supplyKey =
        Key.Optional("supply", supplyMapping, "The supply riser. Without it: usual values.");

    private static readonly Key<DrainPart> drainKey =
        Key.Optional("drain", drainMapping, "The drain stack. Without it: usual values.");

    private static readonly Key<DripTrayPart> dripTrayKey = Key.Optional(
        "drip-tray", new DripTrayMapping(), "The pan under the rack. Without it: what is spilled runs onto the floor.");

    private static readonly Key<RackStand> standKey = Key.Optional(
        "stand", new StandMapping(), "What it weighs and how it stands on the floor. Without it: guessed from tiers and trays.");

    private static readonly Key<WiredPart> wiredKey =
        Key.Optional("wired", new WiredMapping(), "What is wired to act without the controller.");

    private static readonly Key<TrayPart> trayKey = Key.Optional(
        "tray", trayOfAll, "The flood tray of each tier and what stands in it. Without it: usual values.");

    private static readonly Key<BranchPart> branchKey = Key.Optional(
        "branch", branchOfAll, "The pipe from the riser to each tray. Without it: usual values.");

    private static readonly Key<ImmutableArray<TierPart>> tiersKey = Key.Required(
        "tiers", Values.List(new TierMapping(), "tier", MostTiers), "The tiers, bottom first.");

    private static readonly Key<RunnerPart> aeratorKey =
        Key.Optional("aerator", RunnerMapping.Aerator, "The aerator of the reservoir.");

    private static readonly Key<ImmutableArray<RunnerPart>> fansKey = Key.Optional(
        "fans", Values.List(RunnerMapping.Fan, "fan", MostFans), "The fans.");

    private static readonly Key<SensorsPart> sensorsKey =
        Key.Optional("sensors", SensorsMapping.OfRack, "The sensors of the rack.");

    private static readonly Key<SchedulePart> scheduleKey =
        Key.Required("schedule", new ScheduleMapping(), "What should happen when.");

    private static readonly Key<LimitsPart> limitsKey = Key.Optional(
        "limits", limitsMapping, "How far each interlock lets things go. Without it: usual values.");

    private static readonly Key<MeasuredPart> measuredKey = Key.Optional(
        "measured", new MeasuredMapping(), "What timed floods told of it, written by `tune`. Without it: what the figures above say.");

    private static readonly Key<ForBatchesPart> forBatchesKey = Key.Optional(
        "for-batches", new ForBatchesMapping(),
        "What the batches on it ask beside the schedule, written by the program. Without it: what the schedule says.");

    private static readonly Key<UpkeepPart> upkeepKey = Key.Optional(
        "upkeep", new UpkeepMapping(),
        "How often works of upkeep are due on this rack. Without it: as the site's own `upkeep` says, else as the media suggests.");

    /// <inheritdoc/>
    public override string Name => "rack";

    /// <inheritdoc/>
    public override string Doc => "One wheeled frame with its reservoir, pump and tiers.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
    [
        nameKey, circuitKey, reservoirKey, dripTrayKey, pumpKey, wiredKey, aeratorKey, fansKey, sensorsKey, tiersKey, trayKey,
        branchKey, supplyKey, drainKey, standKey, scheduleKey, limitsKey, measuredKey, forBatchesKey, upkeepKey,
    ];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override RackPart? Build(MappingReader keys) => new()
    {
        Place = keys.Place,
        Name = keys.Find(nameKey),
        NamePlace = keys.At(nameKey),
        Circuit = keys.Find(circuitKey),
        CircuitPlace = keys.At(circuitKey),
        NamesCircuit = keys.IsWritten(circuitKey),
        Reservoir = keys.Find(reservoirKey),
        Pump = keys.Find(pumpKey),
        Supply = OrUsual(keys, supplyKey, supplyMapping),
        Drain = OrUsual(keys, drainKey, drainMapping),
        DripTray = keys.Find(dripTrayKey),
        HasDripTray = keys.IsWritten(dripTrayKey),
        Stand = keys.Find(standKey),
        Wired = keys.Find(wiredKey),
        HasWired = keys.IsWritten(wiredKey),
        Tray = OrUsual(keys, trayKey, trayOfAll),
        Branch = OrUsual(keys, branchKey, branchOfAll),
        Tiers = keys.Has(tiersKey) ? [.. keys.Get(tiersKey).Select((tier, index) => tier.Numbered(index + 1))] : [],
        Aerator = keys.Find(aeratorKey),
        Fans = keys.Has(fansKey) ? Named(keys.Get(fansKey)) : [],
        Sensors = SensorsPart.Of(keys, sensorsKey),
        Schedule = Schedule(keys),
        ScheduleAsWritten = keys.Find(scheduleKey),
        ForBatches = keys.Find(forBatchesKey),
        Limits = OrUsual(keys, limitsKey, limitsMapping),
        Measured = keys.Find(measuredKey),
        Upkeep = keys.Find(upkeepKey),
    };

    private static SchedulePart? Schedule(MappingReader keys) =>
        keys.Find(scheduleKey) is { } schedule && keys.Find(forBatchesKey) is { } asked && keys.Has(tiersKey)
            ? asked.In(schedule, keys.Get(tiersKey).Length)
            : keys.Find(scheduleKey);

    private static ImmutableArray<RunnerPart> Named(ImmutableArray<RunnerPart> fans) =>
        [.. fans.Select((fan, index) => fan.Load.ShortName.Length > 0
            ? fan
            : fan with { Load = fan.Load with { ShortName = fans.Length == 1 ? "fan" : $"fan {index + 1}" } })];

    private static T? OrUsual<T>(MappingReader keys, Key<T> key, Mapping<T> mapping)
        where T : class => keys.IsWritten(key) ? keys.Find(key) : mapping.FromDefaults(keys.Place);
}
