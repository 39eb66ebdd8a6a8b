using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>Reads what a rack weighs and how it stands.</summary>
internal sealed class StandMapping : Mapping<RackStand>
{
    private static readonly Key<double> weightKey = Key.Required(
        "weight", new QuantityKind(Dimensions.Mass, "5 kg", "2000 kg"), "Without water and crops: frame, shelves, lamps, trays, tank.");

    private static readonly Key<double> lengthKey = Key.Required(
        "length", new QuantityKind(Dimensions.Length, "100 mm", "5 m"), "Length of the floor that it stands over, outside measure.");

    private static readonly Key<double> widthKey = Key.Required(
        "width", new QuantityKind(Dimensions.Length, "100 mm", "5 m"), "Width of the floor that it stands over, outside measure.");

    private static readonly Key<int> wheelsKey = Key.Defaulted(
        "wheels", new WholeNumberKind("a number of wheels or feet", 3, 12), "4", "On how many wheels or feet it stands.");

    /// <inheritdoc/>
    public override string Name => "stand";

    /// <inheritdoc/>
    public override string Doc => "What the rack weighs and how it stands on the floor, for `plan` and `advise`; no interlock follows it.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [weightKey, lengthKey, widthKey, wheelsKey];

    /// <inheritdoc/>
    protected override RackStand? Build(MappingReader keys) =>
        new(keys.Get(weightKey), keys.Get(lengthKey), keys.Get(widthKey), keys.Get(wheelsKey));
}
