using System.Collections.Immutable;
using NodaTime;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>Trays that grow already, as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="CropPlace">Where the crop's name stands.</param>
/// <param name="TierPlace">Where the tier's name stands.</param>
/// <param name="Crop">What.</param>
/// <param name="Trays">How many.</param>
/// <param name="Sown">When.</param>
/// <param name="Lit">When it came into the light; null while it is dark.</param>
/// <param name="Tier">On which tier it stands; null where that is not said.</param>
internal sealed record GrowingPart(
    Place Place, Place CropPlace, Place TierPlace, string Crop, int Trays, LocalDate Sown, LocalDate? Lit, string? Tier)
{
    /// <summary>Its lot code in the growing book; null where that does not tell of it.</summary>
    public string? Lot { get; init; }
}

/// <summary>Reads trays that grow already.</summary>
internal sealed class GrowingMapping : Mapping<GrowingPart>
{
    private static readonly Key<string> cropKey = Key.Required("crop", PlanKinds.Name, "What, by the name of the crop.");

    private static readonly Key<int> traysKey = Key.Required("trays", new WholeNumberKind("a number of trays", 1, 10_000), "How many.");

    private static readonly Key<LocalDate> sownKey = Key.Required("sown", PlanKinds.Date, "When it was sown.");

    private static readonly Key<LocalDate> litKey = Key.Optional("lit", PlanKinds.Date,
        "When it came into the light; without it, it is dark.");

    private static readonly Key<string> tierKey = Key.Optional("tier", new TextKind("rack and tier", "`\""),
        "Where it stands, such as `north/tier 2`.");

    /// <inheritdoc/>
    public override string Name => "trays that grow";

    /// <inheritdoc/>
    public override string Doc => "Trays that grow already.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [cropKey, traysKey, sownKey, litKey, tierKey];

    /// <inheritdoc/>
    protected override GrowingPart? Build(MappingReader keys) => new(
        keys.Place, keys.At(cropKey), keys.At(tierKey), keys.Get(cropKey), keys.Get(traysKey), keys.Get(sownKey), keys.FindValue(litKey),
        keys.Find(tierKey));
}
