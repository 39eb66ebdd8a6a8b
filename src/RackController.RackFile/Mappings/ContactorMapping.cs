using System.Collections.Immutable;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>Reads the contactor of a circuit, written by <c>yes</c>; more keys when needed.</summary>
internal sealed class ContactorMapping : Mapping<ContactorPart>
{
    private static readonly Key<bool> fittedKey = Key.Defaulted("fitted", Values.Flag, "yes", "Whether the circuit has one.");

    private static readonly LineKeys lineKeys = new(
        "The GPIO line that energises its coil.",
        "Whether a low or a high level energises the coil and so cuts the circuit.");

    /// <inheritdoc/>
    public override string Name => "upstream contactor";

    /// <inheritdoc/>
    public override string Doc => "The contactor between a circuit's breaker and its relays.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [fittedKey, .. lineKeys.All];

    /// <inheritdoc/>
    protected override Key? Shorthand => fittedKey;

    /// <inheritdoc/>
    protected override ContactorPart? Build(MappingReader keys) => new(keys.Place, keys.Get(fittedKey), lineKeys.Read(keys));
}
