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
internal sealed record LightsPart(Place Place, Photoperiod ForAll, Duration Stagger, ImmutableArray<TierPhotoperiod> OfTiers);

/// <summary>When one tier is lit, as written.</summary>
/// <param name="TierPlace">Where the tier's number stands.</param>
/// <param name="Tier">Its number.</param>
/// <param name="Photoperiod">When it is lit.</param>
internal sealed record TierPhotoperiod(Place TierPlace, int Tier, Photoperiod Photoperiod);

/// <summary>The keys of a photoperiod.</summary>
internal sealed class PhotoperiodKeys
{
    private readonly Key<LocalTime> _on = Key.Required("on", Kinds.TimeOfDay, "Local time the light comes on.");

    private readonly Key<Duration> _length = Key.Required(
        "for", Kinds.Duration("0 min", "24 h", "a day has 24 h; write at most that"),
        "The photoperiod: how long the light stays on, in elapsed time, also across midnight and a change of the clock.");

    public ImmutableArray<Key> All => [_on, _length];

    public Photoperiod Read(MappingReader keys) => new(keys.Get(_on), keys.Get(_length));
}

/// <summary>Reads when the tiers are lit.</summary>
internal sealed class LightsMapping : Mapping<LightsPart>
{
    private static readonly PhotoperiodKeys _photoperiod = new();

    private static readonly Key<Duration> _stagger = Key.Defaulted(
        "stagger", Kinds.Duration("0 min", "1 h"), "0 min", "How much later each tier's light comes on than the one below it.");

    private static readonly Key<ImmutableArray<TierPhotoperiod>> _tiers = Key.Optional(
        "tiers", Kinds.List(new TierPhotoperiodMapping(), "tier", 12), "Tiers that are lit at other times.");

    /// <inheritdoc/>
    public override string Name => "lights";

    /// <inheritdoc/>
    public override string Doc => "When the tiers are lit, every day.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. _photoperiod.All, _stagger, _tiers];

    /// <inheritdoc/>
    protected override LightsPart? Build(MappingReader keys) => new(
        keys.Place, _photoperiod.Read(keys), keys.Get(_stagger), keys.Has(_tiers) ? keys.Get(_tiers) : []);
}

/// <summary>Reads when one tier is lit.</summary>
internal sealed class TierPhotoperiodMapping : Mapping<TierPhotoperiod>
{
    private static readonly PhotoperiodKeys _photoperiod = new();

    private static readonly Key<int> _tier = Key.Required(
        "tier", new WholeNumberKind("a tier's number", 1, 12), "Number of the tier, 1 at the bottom.");

    /// <inheritdoc/>
    public override string Name => "lights of a tier";

    /// <inheritdoc/>
    public override string Doc => "When one tier is lit, where it differs from the others.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [_tier, .. _photoperiod.All];

    /// <inheritdoc/>
    protected override TierPhotoperiod? Build(MappingReader keys) =>
        new(keys.At(_tier), keys.Get(_tier), _photoperiod.Read(keys));
}
