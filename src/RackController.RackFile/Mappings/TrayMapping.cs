using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A flood tray and what stands in it, as written; null where another place decides.</summary>
internal sealed record TrayPart
{
    public required Place Place { get; init; }

    public double? LengthMm { get; init; }

    public double? WidthMm { get; init; }

    public double? RimMm { get; init; }

    public double? StandpipeMm { get; init; }

    public required Place StandpipePlace { get; init; }

    public double? StandpipeBoreMm { get; init; }

    public double? WeepMm { get; init; }

    public int? InsertTrays { get; init; }

    public string? Media { get; init; }

    public double? DisplacedPercent { get; init; }

    public double? DisplacedToMm { get; init; }

    /// <summary>These values, and those of another where these say nothing.</summary>
    public TrayPart Over(TrayPart other) => new()
    {
        Place = Place,
        LengthMm = LengthMm ?? other.LengthMm,
        WidthMm = WidthMm ?? other.WidthMm,
        RimMm = RimMm ?? other.RimMm,
        StandpipeMm = StandpipeMm ?? other.StandpipeMm,
        StandpipePlace = StandpipeMm is null && RimMm is null ? other.StandpipePlace : StandpipePlace,
        StandpipeBoreMm = StandpipeBoreMm ?? other.StandpipeBoreMm,
        WeepMm = WeepMm ?? other.WeepMm,
        InsertTrays = InsertTrays ?? other.InsertTrays,
        Media = Media ?? other.Media,
        DisplacedPercent = DisplacedPercent ?? other.DisplacedPercent,
        DisplacedToMm = DisplacedToMm ?? other.DisplacedToMm,
    };

    /// <summary>The tray, once every value is known.</summary>
    public FloodTray ToTray() => new(
        LengthMm!.Value, WidthMm!.Value, RimMm!.Value, StandpipeMm!.Value, StandpipeBoreMm!.Value, WeepMm!.Value,
        new TrayContents(InsertTrays!.Value, Media!, DisplacedPercent!.Value / 100, DisplacedToMm!.Value));
}

/// <summary>Reads a flood tray, of one tier or of all.</summary>
/// <param name="ofAllTiers">Whether it holds for all tiers, and so has defaults.</param>
internal sealed class TrayMapping(bool ofAllTiers) : Mapping<TrayPart>
{
    private static readonly QuantityKind traySide = new(Dimensions.Length, "100 mm", "3 m");

    private readonly Key<double> lengthKey = Key.DefaultedIf("length", traySide, "1120 mm", ofAllTiers, "Inside length.");

    private readonly Key<double> widthKey = Key.DefaultedIf("width", traySide, "640 mm", ofAllTiers, "Inside width.");

    private readonly Key<double> rimKey = Key.DefaultedIf(
        "rim", new QuantityKind(Dimensions.Length, "10 mm", "500 mm"), "85 mm", ofAllTiers,
        "Depth at which water runs over the edge onto the floor.");

    private readonly Key<double> standpipeKey = Key.DefaultedIf(
        "standpipe", new QuantityKind(Dimensions.Length, "5 mm", "500 mm"), "44.5 mm", ofAllTiers,
        "Height of the standpipe's mouth above the tray's floor: it sets the flood depth and must stand below the rim.");

    private readonly Key<double> standpipeBoreKey = Key.DefaultedIf(
        "standpipe-bore", Values.Bore, "26.6 mm", ofAllTiers, "Inside diameter of the standpipe.");

    private readonly Key<double> weepKey = Key.DefaultedIf(
        "weep", new QuantityKind(Dimensions.Length, "0 mm", "50 mm"), "9.5 mm", ofAllTiers,
        "Diameter of the drain hole that is always open; `0 mm` for a tray that drains only back through its supply.");

    private readonly Key<int> insertTraysKey = Key.DefaultedIf(
        "insert-trays", new WholeNumberKind("a count", 0, 40), "4", ofAllTiers, "How many 10 x 20 in insert trays stand in it.");

    private readonly Key<string> mediaKey =
        Key.DefaultedIf("media", Values.Label, "coir", ofAllTiers, "What the crop roots in, in your own words.");

    private readonly Key<double> displacedKey = Key.DefaultedIf(
        "displaced", new QuantityKind(Dimensions.Percentage, "0 %", "90 %"), "30 %", ofAllTiers,
        "Share of the tray's plan area that media and insert trays take from the water.");

    private readonly Key<double> displacedToKey =
        Key.DefaultedIf("displaced-to", Values.Length, "40 mm", ofAllTiers, "Up to which depth they do so.");

    /// <inheritdoc/>
    public override string Name => ofAllTiers ? "tray of all tiers" : "tray";

    /// <inheritdoc/>
    public override string Doc => ofAllTiers
        ? "The flood tray of each tier and what stands in it, where a tier does not say otherwise."
        : "The flood tray of this tier and what stands in it, where it differs from the rack's.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
        [lengthKey, widthKey, rimKey, standpipeKey, standpipeBoreKey, weepKey, insertTraysKey, mediaKey, displacedKey,
            displacedToKey];

    /// <inheritdoc/>
    protected override TrayPart? Build(MappingReader keys) => new()
    {
        Place = keys.Place,
        LengthMm = keys.FindValue(lengthKey),
        WidthMm = keys.FindValue(widthKey),
        RimMm = keys.FindValue(rimKey),
        StandpipeMm = keys.FindValue(standpipeKey),
        StandpipePlace = keys.IsWritten(standpipeKey) ? keys.At(standpipeKey) : keys.At(rimKey),
        StandpipeBoreMm = keys.FindValue(standpipeBoreKey),
        WeepMm = keys.FindValue(weepKey),
        InsertTrays = keys.FindValue(insertTraysKey),
        Media = keys.Find(mediaKey),
        DisplacedPercent = keys.FindValue(displacedKey),
        DisplacedToMm = keys.FindValue(displacedToKey),
    };
}
