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

    /// <summary>Whether nothing of its height, tray and branch was refused.</summary>
    public required bool IsShapeSound { get; init; }

    /// <summary>Whether a light is written, sound or not.</summary>
    public required bool HasLight { get; init; }

    /// <summary>Whether a valve is written, sound or not.</summary>
    public required bool HasValve { get; init; }

    public TrayPart? Tray { get; init; }

    public BranchPart? Branch { get; init; }

    public LightPart? Light { get; init; }

    public LoadPart? Valve { get; init; }

    public bool InUse { get; init; } = true;

    /// <summary>Whether a flood reaches it: out of use, only a valve keeps the water away.</summary>
    public bool IsFlooded => InUse || !HasValve;

    public required SensorsPart Sensors { get; init; }

    /// <summary>Its flood tray: what it says itself, and what holds for every tier where it says nothing.</summary>
    /// <param name="ofAllTiers">The tray of all tiers.</param>
    public TrayPart TrayOver(TrayPart ofAllTiers) => Tray?.Over(ofAllTiers) ?? ofAllTiers;

    /// <summary>Its loads, the light first.</summary>
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
        Sensors = Sensors with { Sensors = [.. Sensors.Sensors.Select(sensor => sensor with { TierNumber = number })] },
    };

    private static LoadPart Numbered(LoadPart load, int number, string name) =>
        load with { TierNumber = number, ShortName = $"tier {number} {name}" };
}

/// <summary>Reads a tier.</summary>
internal sealed class TierMapping : Mapping<TierPart>
{
    private static readonly Key<double> heightKey = Key.Optional(
        "height", Values.Length,
        "Height of the flood tray's inside floor above the floor of the room. Without it: by the number of tiers.");

    private static readonly Key<TrayPart> trayKey = Key.Optional(
        "tray", new TrayMapping(ofAllTiers: false), "The flood tray of this tier, where it differs from the rack's.");

    private static readonly Key<BranchPart> branchKey = Key.Optional(
        "branch", new BranchMapping(ofAllTiers: false), "The pipe to this tray, where it differs from the rack's.");

    private static readonly Key<LightPart> lightKey = Key.Optional(
        "light", new LightMapping(), "The light of this tier. Without it the tier grows in the dark.");

    private static readonly Key<LoadPart> valveKey = Key.Optional(
        "valve", new ValveMapping(), "The valve of this tier. Without it water flows whenever the pump runs.");

    private static readonly Key<bool> inUseKey =
        Key.Defaulted("in-use", Values.Flag, "yes", "Whether it takes part: neither light nor water if not.");

    private static readonly Key<SensorsPart> sensorsKey =
        Key.Optional("sensors", SensorsMapping.OfTier, "The sensors of this tier.");

    /// <inheritdoc/>
    public override string Name => "tier";

    /// <inheritdoc/>
    public override string Doc => "One shelf with its flood tray, light and valve.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [heightKey, lightKey, valveKey, sensorsKey, trayKey, branchKey, inUseKey];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override TierPart? Build(MappingReader keys) => new()
    {
        Place = keys.Place,
        HeightMm = keys.FindValue(heightKey),
        HeightPlace = keys.At(heightKey),
        IsShapeSound = !keys.WasRefused(heightKey) && !keys.WasRefused(trayKey) && !keys.WasRefused(branchKey),
        HasLight = keys.IsWritten(lightKey),
        HasValve = keys.IsWritten(valveKey),
        Tray = keys.Find(trayKey),
        Branch = keys.Find(branchKey),
        Light = keys.Find(lightKey),
        Valve = keys.Find(valveKey),
        InUse = keys.FindValue(inUseKey) ?? true,
        Sensors = SensorsPart.Of(keys, sensorsKey),
    };
}
