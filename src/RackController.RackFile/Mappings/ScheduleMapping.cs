using System.Collections.Immutable;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>What should happen when, as written; null where nothing should or something was refused.</summary>
/// <param name="Place">Where.</param>
/// <param name="HasLights">Whether lights are written, sound or not.</param>
/// <param name="Lights">When the tiers are lit.</param>
/// <param name="Floods">When the trays are flooded.</param>
internal sealed record SchedulePart(Place Place, bool HasLights, LightsPart? Lights, FloodsPart? Floods);

/// <summary>Reads what should happen when.</summary>
internal sealed class ScheduleMapping : Mapping<SchedulePart>
{
    private static readonly Key<LightsPart> lightsKey = Key.Optional(
        "lights", new LightsMapping(), "When the tiers are lit. Without it: never.");

    private static readonly Key<FloodsPart> floodsKey = Key.Optional(
        "floods", new FloodsMapping(), "When the trays are flooded. Without it: never.");

    /// <inheritdoc/>
    public override string Name => "schedule";

    /// <inheritdoc/>
    public override string Doc => "What should happen when, in local time. Interlocks and circuit decide whether it may.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [lightsKey, floodsKey];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override SchedulePart? Build(MappingReader keys) =>
        new(keys.Place, keys.IsWritten(lightsKey), keys.Find(lightsKey), keys.Find(floodsKey));
}
