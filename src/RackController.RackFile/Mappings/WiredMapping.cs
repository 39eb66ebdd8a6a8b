using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>What works without the controller, as written.</summary>
/// <param name="FloatCutout">The float in the pump's wire; null for none.</param>
/// <param name="TimeCutout">The time relay in the pump's wire; null for none.</param>
internal sealed record WiredPart(FloatCutoutPart? FloatCutout, TimeCutoutPart? TimeCutout);

/// <summary>A float in the pump's wire as written.</summary>
internal sealed record FloatCutoutPart(Place Place, FloatCutout Cutout);

/// <summary>A time relay in the pump's wire as written.</summary>
internal sealed record TimeCutoutPart(Place Place, TimeCutout Cutout);

/// <summary>Reads what is wired to work without the controller.</summary>
internal sealed class WiredMapping : Mapping<WiredPart>
{
    private static readonly Key<FloatCutoutPart> cutoutKey = Key.Optional(
        "float-cutout", new FloatCutoutMapping(),
        "A float in series with the pump: wet, it opens the pump's wire until somebody resets it.");

    private static readonly Key<Duration> timeKey = Key.Optional(
        "time-cutout", new DurationKind("1 min", "4 h", "it is there to stop a pump within minutes"),
        "A time relay in series with the pump: once the pump's relay gave it power for so long, it opens the pump's wire until that is "
        + "off. Longer than `pump-maximum-run`.");

    /// <inheritdoc/>
    public override string Name => "wired";

    /// <inheritdoc/>
    public override string Doc => "What is wired to act without the controller, which can neither see nor switch it.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [cutoutKey, timeKey];

    /// <inheritdoc/>
    protected override WiredPart? Build(MappingReader keys) => new(
        keys.Find(cutoutKey),
        keys.FindValue(timeKey) is { } after ? new TimeCutoutPart(keys.At(timeKey), new TimeCutout(after)) : null);
}

/// <summary>Reads a float in the pump's wire.</summary>
internal sealed class FloatCutoutMapping : Mapping<FloatCutoutPart>
{
    private static readonly Key<double> heightKey = Key.Required(
        "height", new QuantityKind(Dimensions.Length, "1 mm", "1 m"),
        "Height of its switching point above the floor of the drip tray, or of the flood tray that it hangs in.");

    private static readonly Key<int> tierKey = Key.Optional(
        "tier", new WholeNumberKind("a tier", 1, RackMapping.MostTiers),
        "The tier above whose standpipe it hangs. Without it: in the drip tray.");

    /// <inheritdoc/>
    public override string Name => "float cutout";

    /// <inheritdoc/>
    public override string Doc => "A float in series with the pump, in the drip tray or above a standpipe.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [heightKey, tierKey];

    /// <inheritdoc/>
    protected override Key? Shorthand => heightKey;

    /// <inheritdoc/>
    protected override FloatCutoutPart? Build(MappingReader keys) =>
        new(keys.Place, new FloatCutout(keys.FindValue(tierKey), keys.Get(heightKey)));
}
