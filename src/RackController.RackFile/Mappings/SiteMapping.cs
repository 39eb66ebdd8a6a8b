using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A whole rack file as written; null where something was refused.</summary>
internal sealed record SitePart
{
    public string? Name { get; init; }

    public DateTimeZone? Zone { get; init; }

    public ShownUnits? Units { get; init; }

    public required ImmutableArray<CircuitPart> Circuits { get; init; }

    public required ImmutableArray<RackPart> Racks { get; init; }

    public ScanTiming? Scan { get; init; }

    public IoPart? Io { get; init; }

    public NoticePlan? Notices { get; init; }

    public BatchPolicy? Batches { get; init; }

    public UpkeepPart? Upkeep { get; init; }
}

/// <summary>Reads a rack file.</summary>
internal sealed class SiteMapping : Mapping<SitePart>
{
    /// <summary>More than the distribution board of a cellar holds.</summary>
    private const int MostCircuits = 24;

    /// <summary>More than one small board has relays for.</summary>
    private const int MostRacks = 64;

    private static readonly ScanMapping scanMapping = new();

    private static readonly Key<string> nameKey = Key.Required("site", Values.Name, "What you call the place.");

    private static readonly Key<DateTimeZone> zoneKey = Key.Required(
        "zone", new ZoneKind(), "The IANA time zone that schedules are read in.");

    private static readonly Key<ShownUnits> unitsKey = Key.Defaulted(
        "units", new ChoiceKind<ShownUnits>([("metric", ShownUnits.Metric), ("us", ShownUnits.UsCustomary)]), "metric",
        "What the page, the live screen and alarms show figures in: `metric`, or `us` for inches, US gallons and °F. In this file each "
        + "value says its own unit.");

    private static readonly Key<ImmutableArray<CircuitPart>> circuitsKey = Key.Required(
        "circuits", Values.List(new CircuitMapping(), "circuit", MostCircuits), "The branch circuits that the racks draw from.");

    private static readonly Key<ImmutableArray<RackPart>> racksKey = Key.Required(
        "racks", Values.List(new RackMapping(), "rack", MostRacks), "The racks.");

    private static readonly Key<ScanTiming> scanKey = Key.Optional(
        "scan", scanMapping, "How often the controller looks. Without it: ten times a second.");

    private static readonly Key<IoPart> ioKey = Key.Defaulted(
        "io", new IoMapping(), "simulated", "Where the relays and sensors are: `simulated`, or `gpio` with a chip.");

    private static readonly Key<NoticePlan> noticesKey = Key.Optional(
        "notices", new NoticesMapping(), "Whom to tell of alarms while nobody looks. Without it: nobody.");

    private static readonly Key<BatchPolicy> batchesKey = Key.Optional(
        "batches", new BatchPolicyMapping(), "How batches of the growing book act on the racks. Without it: nothing happens by itself.");

    private static readonly Key<UpkeepPart> upkeepKey = Key.Optional(
        "upkeep", new UpkeepMapping(), "How often works of upkeep are due on every rack. Without it: as the media suggests.");

    public static SiteMapping Instance { get; } = new();

    /// <inheritdoc/>
    public override string Name => "rack file";

    /// <inheritdoc/>
    public override string Doc => "A site: its circuits, its racks, what should happen when, and how it is wired.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
        [nameKey, zoneKey, unitsKey, circuitsKey, racksKey, scanKey, ioKey, noticesKey, batchesKey, upkeepKey];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override SitePart? Build(MappingReader keys) => new()
    {
        Name = keys.Find(nameKey),
        Zone = keys.Find(zoneKey),
        Units = keys.Find(unitsKey),
        Circuits = keys.Has(circuitsKey) ? keys.Get(circuitsKey) : [],
        Racks = keys.Has(racksKey) ? keys.Get(racksKey) : [],
        Scan = keys.IsWritten(scanKey) ? keys.Find(scanKey) : scanMapping.FromDefaults(keys.Place),
        Io = keys.Find(ioKey),
        Notices = keys.Find(noticesKey),
        Batches = keys.Find(batchesKey),
        Upkeep = keys.Find(upkeepKey),
    };
}
