using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>When the tiers are lit, as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="ForAll">For every tier that does not say otherwise.</param>
/// <param name="Stagger">How much later each tier comes on than the one below.</param>
/// <param name="OfTiers">Those that say otherwise.</param>
internal sealed record LightsPart(Place Place, Photoperiod ForAll, Duration Stagger, ImmutableArray<TierPhotoperiod> OfTiers)
{
    /// <summary>When a tier is lit.</summary>
    /// <param name="tier">Its number, 1 at the bottom.</param>
    public Photoperiod Of(int tier) => OfTiers.FirstOrDefault(one => one.Tier == tier)?.Photoperiod ?? ForAll;
}

/// <summary>When one tier is lit, as written.</summary>
/// <param name="TierPlace">Where the tier's number stands.</param>
/// <param name="Tier">Its number.</param>
/// <param name="Photoperiod">When it is lit.</param>
internal sealed record TierPhotoperiod(Place TierPlace, int Tier, Photoperiod Photoperiod);

/// <summary>The keys of a photoperiod.</summary>
internal sealed class PhotoperiodKeys
{
    private readonly Key<LocalTime> onKey = Key.Required("on", Values.TimeOfDay, "Local time the light comes on.");

    private readonly Key<Duration> lengthKey = Key.Required(
        "for", Values.Duration("0 min", "24 h", "a day has 24 h; write at most that"),
        "The photoperiod: how long the light stays on, in elapsed time, also across midnight and a change of the clock.");

    public ImmutableArray<Key> All => [onKey, lengthKey];

    public Photoperiod Read(MappingReader keys) => new(keys.Get(onKey), keys.Get(lengthKey));
}

/// <summary>Reads when the tiers are lit.</summary>
internal sealed class LightsMapping : Mapping<LightsPart>
{
    private static readonly PhotoperiodKeys photoperiodKeys = new();

    private static readonly Key<Duration> staggerKey = Key.Defaulted(
        "stagger", Values.Duration("0 min", "1 h"), "0 min", "How much later each tier's light comes on than the one below it.");

    private static readonly Key<ImmutableArray<TierPhotoperiod>> tiersKey = Key.Optional(
        "tiers", Values.List(new TierPhotoperiodMapping(), "tier", RackMapping.MostTiers), "Tiers that are lit at other times.");

    /// <inheritdoc/>
    public override string Name => "lights";

    /// <inheritdoc/>
    public override string Doc => "When the tiers are lit, every day.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. photoperiodKeys.All, staggerKey, tiersKey];

    /// <inheritdoc/>
    protected override LightsPart? Build(MappingReader keys) => new(
        keys.Place, photoperiodKeys.Read(keys), keys.Get(staggerKey), keys.Has(tiersKey) ? keys.Get(tiersKey) : []);
}

/// <summary>Reads when one tier is lit.</summary>
internal sealed class TierPhotoperiodMapping : Mapping<TierPhotoperiod>
{
    private static readonly PhotoperiodKeys photoperiodKeys = new();

    private static readonly Key<int> tierKey = Key.Required(
        "tier", new WholeNumberKind("a tier's number", 1, RackMapping.MostTiers), "Number of the tier, 1 at the bottom.");

    /// <inheritdoc/>
    public override string Name => "lights of a tier";

    /// <inheritdoc/>
    public override string Doc => "When one tier is lit, where it differs from the others.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [tierKey, .. photoperiodKeys.All];

    /// <inheritdoc/>
    protected override TierPhotoperiod? Build(MappingReader keys) =>
        new(keys.At(tierKey), keys.Get(tierKey), photoperiodKeys.Read(keys));
}
