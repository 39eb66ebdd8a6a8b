using System.Collections.Immutable;
using NodaTime;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>How a fan or aerator runs, as written. All null: always.</summary>
/// <param name="Place">Where.</param>
/// <param name="On">How long on, in cycles.</param>
/// <param name="Off">How long off.</param>
/// <param name="OnAbove">On above this reading.</param>
/// <param name="OffBelow">Off below this one.</param>
internal sealed record RunPart(Place Place, Duration? On, Duration? Off, AirReading? OnAbove, AirReading? OffBelow);

/// <summary>A reading of the air as written.</summary>
/// <param name="Value">Degrees Celsius or %.</param>
/// <param name="IsHumidity">Which of the two.</param>
internal sealed record AirReading(double Value, bool IsHumidity);

/// <summary>Reads how a fan or aerator runs.</summary>
internal sealed class RunMapping : Mapping<RunPart>
{
    private static readonly Key<bool> alwaysKey = Key.Optional(
        "always", new ChoiceKind<bool>([("always", true)]), "Always on.");

    private static readonly Key<Duration> onKey = Key.Optional("on", Values.Duration("1 s", "24 h"), "In cycles: how long on.");

    private static readonly Key<Duration> offKey = Key.Optional("off", Values.Duration("1 s", "24 h"), "In cycles: how long off.");

    private static readonly Key<AirReading> onAboveKey = Key.Optional(
        "on-above", new AirReadingKind(), "On above this temperature or humidity of the rack's air, and until `off-below`.");

    private static readonly Key<AirReading> offBelowKey = Key.Optional("off-below", new AirReadingKind(), "Off below this one.");

    /// <inheritdoc/>
    public override string Name => "run";

    /// <inheritdoc/>
    public override string Doc => "`always`, or in cycles (`on` and `off`), or by the air (`on-above` and `off-below`).";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [alwaysKey, onKey, offKey, onAboveKey, offBelowKey];

    /// <inheritdoc/>
    protected override Key? Shorthand => alwaysKey;

    /// <inheritdoc/>
    protected override RunPart? Build(MappingReader keys)
    {
        var run = new RunPart(
            keys.Place, keys.FindValue(onKey), keys.FindValue(offKey), keys.Find(onAboveKey), keys.Find(offBelowKey));
        bool[] ways =
            [keys.Has(alwaysKey), keys.Has(onKey) || keys.Has(offKey), keys.Has(onAboveKey) || keys.Has(offBelowKey)];
        if (ways.Count(way => way) != 1 || run.On is null != run.Off is null || run.OnAbove is null != run.OffBelow is null)
        {
            keys.Complaints.Refuse(
                keys.Place, "not one whole way to run",
                "write `always`, or `on` and `off`, or `on-above` and `off-below`");
            return null;
        }

        if (run is { OnAbove: { } above, OffBelow: { } below }
            && (above.IsHumidity != below.IsHumidity || above.Value <= below.Value))
        {
            keys.Refuse(
                offBelowKey, "not below `on-above`", "write a lower value of the same kind, so that the load does not flutter");
            return null;
        }

        return run;
    }
}

/// <summary>A temperature or a humidity.</summary>
internal sealed class AirReadingKind : ScalarKind<AirReading>
{
    private static readonly QuantityKind temperature = new(Dimensions.Temperature, "-10 °C", "50 °C");

    private static readonly QuantityKind humidity = new(Dimensions.Percentage, "0 %", "100 %");

    /// <inheritdoc/>
    public override string Expected => "a temperature or a humidity, such as `26 °C` or `65 %`";

    /// <inheritdoc/>
    public override System.Text.Json.Nodes.JsonObject Describe(SchemaWriter schema) => new()
    {
        ["anyOf"] = new System.Text.Json.Nodes.JsonArray(temperature.Describe(schema), humidity.Describe(schema)),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out AirReading value)
    {
        var isHumidity = text.EndsWith('%');
        var misfit = (isHumidity ? humidity : temperature).ParseText(text, out var number);
        value = new AirReading(number, isHumidity);
        return misfit;
    }
}
