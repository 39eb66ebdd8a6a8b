using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>A drip tray as written.</summary>
internal sealed record DripTrayPart(Place Place, DripTray Tray);

/// <summary>Reads the pan under a rack.</summary>
internal sealed class DripTrayMapping : Mapping<DripTrayPart>
{
    private static readonly Key<double> capacityKey = Key.Required(
        "capacity", Values.Volume, "Water that it holds to its rim beside what stands in it.");

    private static readonly Key<double> depthKey = Key.Defaulted(
        "depth", new Binding.Kinds.QuantityKind(Binding.Kinds.Dimensions.Length, "10 mm", "1 m"), "80 mm",
        "Height of its rim above its floor.");

    /// <inheritdoc/>
    public override string Name => "drip tray";

    /// <inheritdoc/>
    public override string Doc => "The watertight pan under the rack, in which the reservoir stands too; it catches what is spilled.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [capacityKey, depthKey];

    /// <inheritdoc/>
    protected override Key? Shorthand => capacityKey;

    /// <inheritdoc/>
    protected override DripTrayPart? Build(MappingReader keys) =>
        new(keys.Place, new DripTray(keys.Get(capacityKey), keys.Get(depthKey)));
}
