using System.Collections.Immutable;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>A tier as written; null where something was refused or another place decides.</summary>
internal sealed record TierPart
{
    public required Place Place { get; init; }

    /// <summary>1 at the bottom.</summary>
    public int Number { get; init; }

    public double? HeightMm { get; init; }

    public required Place HeightPlace { get; init; }

    public TrayPart? Tray { get; init; }

    public BranchPart? Branch { get; init; }

    public LightPart? Light { get; init; }

    public LoadPart? Valve { get; init; }

    public bool InUse { get; init; } = true;

    public required SensorsPart Sensors { get; init; }

    /// <summary>Its loads.</summary>
    public IEnumerable<LoadPart> Loads
    {
        get
        {
            if (Light is not null)
            {
                yield return Light.Load;
            }

            if (Valve is not null)
            {
                yield return Valve;
            }
        }
    }

    /// <summary>The tier once its place in the rack is known; its loads and sensors carry its number.</summary>
    /// <param name="number">1 at the bottom.</param>
    public TierPart Numbered(int number) => this with
    {
        Number = number,
        Light = Light is null ? null : Light with { Load = Numbered(Light.Load, number, "light") },
        Valve = Valve is null ? null : Numbered(Valve, number, "valve"),
        Sensors = new SensorsPart([.. Sensors.Sensors.Select(sensor => sensor with { TierNumber = number })]),
    };

    private static LoadPart Numbered(LoadPart load, int number, string name) =>
        load with { TierNumber = number, ShortName = $"tier {number} {name}" };
}

/// <summary>Reads a tier.</summary>
internal sealed class TierMapping : Mapping<TierPart>
{
    private static readonly Key<double> _height = Key.Optional(
        "height", Kinds.Length,
        "Height of the flood tray's inside floor above the floor of the room. Without it: by the number of tiers.");

    private static readonly Key<TrayPart> _tray = Key.Optional(
        "tray", new TrayMapping(ofAllTiers: false), "The flood tray of this tier, where it differs from the rack's.");

    private static readonly Key<BranchPart> _branch = Key.Optional(
        "branch", new BranchMapping(ofAllTiers: false), "The pipe to this tray, where it differs from the rack's.");

    private static readonly Key<LightPart> _light = Key.Optional(
        "light", new LightMapping(), "The light of this tier. Without it the tier grows in the dark.");

    private static readonly Key<LoadPart> _valve = Key.Optional(
        "valve", new ValveMapping(), "The valve of this tier. Without it water flows whenever the pump runs.");

    private static readonly Key<bool> _inUse = Key.Defaulted("in-use", Kinds.Flag, "yes", "Whether it takes part: neither light nor water if not.");

    private static readonly Key<SensorsPart> _sensors = Key.Optional("sensors", SensorsMapping.OfTier, "The sensors of this tier.");

    /// <inheritdoc/>
    public override string Name => "tier";

    /// <inheritdoc/>
    public override string Doc => "One shelf with its flood tray, light and valve.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [_height, _light, _valve, _sensors, _tray, _branch, _inUse];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override TierPart? Build(MappingReader keys) => new()
    {
        Place = keys.Place,
        HeightMm = keys.FindValue(_height),
        HeightPlace = keys.At(_height),
        Tray = keys.Find(_tray),
        Branch = keys.Find(_branch),
        Light = keys.Find(_light),
        Valve = keys.Find(_valve),
        InUse = keys.FindValue(_inUse) ?? true,
        Sensors = keys.Find(_sensors) ?? SensorsPart.None,
    };
}
