using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A branch circuit as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="Name">Its name; null when it was refused.</param>
/// <param name="NamePlace">Where its name stands.</param>
/// <param name="Supply">Its ratings; null when one was refused.</param>
/// <param name="LimitPlace">Where the continuous limit stands.</param>
/// <param name="Sensors">Its sensors.</param>
/// <param name="Contactor">The contactor that can cut it; null where there is none.</param>
internal sealed record CircuitPart(
    Place Place, string? Name, Place NamePlace, SupplyRating? Supply, Place LimitPlace, SensorsPart Sensors,
    ContactorPart? Contactor);

/// <summary>What a circuit can give.</summary>
internal sealed record SupplyRating(double VoltageV, double BreakerA, double ContinuousLimitA);

/// <summary>The contactor of a circuit as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="IsFitted">Whether the circuit has one.</param>
/// <param name="Line">The line of its coil.</param>
internal sealed record ContactorPart(Place Place, bool IsFitted, LinePart? Line);

/// <summary>Reads a branch circuit.</summary>
internal sealed class CircuitMapping : Mapping<CircuitPart>
{
    private static readonly Key<string> nameKey = Key.Required("name", Values.Name, "What it is called; unique on the site.");

    private static readonly Key<double> voltageKey = Key.Required(
        "voltage", new QuantityKind(Dimensions.Voltage, "100 V", "250 V"), "Supply voltage.");

    private static readonly Key<double> breakerKey = Key.Required(
        "breaker", new QuantityKind(Dimensions.Current, "1 A", "63 A"), "Rated current of the breaker or plug fuse.");

    private static readonly Key<double> limitKey = Key.Optional(
        "continuous-limit", new QuantityKind(Dimensions.Current, "500 mA", "63 A"),
        "What it may carry for hours. Without it: 80 % of the breaker.");

    private static readonly Key<ContactorPart> contactorKey = Key.Optional(
        "upstream-contactor", new ContactorMapping(),
        "A contactor before the relays that the controller opens when a relay has welded. It is closed while its coil is at rest.");

    private static readonly Key<SensorsPart> sensorsKey = Key.Optional(
        "sensors", SensorsMapping.OfCircuit, "How the controller learns of its supply and current.");

    /// <inheritdoc/>
    public override string Name => "circuit";

    /// <inheritdoc/>
    public override string Doc => "A branch circuit (breaker and outlet) that loads draw from.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [nameKey, voltageKey, breakerKey, limitKey, contactorKey, sensorsKey];

    /// <inheritdoc/>
    protected override bool BuildsFromParts => true;

    /// <inheritdoc/>
    protected override CircuitPart? Build(MappingReader keys)
    {
        var rating = keys.Has(voltageKey) && keys.Has(breakerKey)
            && (keys.Has(limitKey) || !keys.IsWritten(limitKey))
            ? new SupplyRating(
                keys.Get(voltageKey), keys.Get(breakerKey),
                keys.FindValue(limitKey) ?? keys.Get(breakerKey) * Circuit.ContinuousShare)
            : null;
        return new CircuitPart(
            keys.Place, keys.Find(nameKey), keys.At(nameKey), rating, keys.At(limitKey), SensorsPart.Of(keys, sensorsKey),
            keys.Find(contactorKey) is { IsFitted: true } contactor ? contactor : null);
    }
}
