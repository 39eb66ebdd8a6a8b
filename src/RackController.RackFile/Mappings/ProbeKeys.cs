using System.Collections.Immutable;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>How a measured value is read on a board, as written.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="PartName">The part on a bus; null for none.</param>
/// <param name="Input">Its input; null where it has none, or none is named.</param>
/// <param name="Points">What voltages stand for.</param>
/// <param name="OneWireCode">The thermometer on a 1-wire bus; null for none.</param>
/// <param name="Line">The line of a flow meter; null for none.</param>
/// <param name="PulsesPerL">Its pulses for a litre; null where nothing says so.</param>
internal sealed record ProbePart(
    Place Place, string? PartName, int? Input, ImmutableArray<CalibrationPoint> Points, string? OneWireCode, LinePart? Line,
    double? PulsesPerL);

/// <summary>The keys that say how a measured value is read on a board.</summary>
internal sealed class ProbeKeys
{
    private static readonly WholeNumberKind input = new("an input", 0, 3);

    private readonly Key<string>? oneWireKey;
    private readonly Key<string> partKey;
    private readonly Key<int>? inputKey;
    private readonly Key<ImmutableArray<CalibrationPoint>>? pointsKey;
    private readonly LineKeys? lineKeys;
    private readonly Key<double>? pulsesKey;

    /// <summary>Declares them for a kind of sensor.</summary>
    /// <param name="kind">What is measured.</param>
    public ProbeKeys(SensorKind kind)
    {
        var isByItself = kind is SensorKind.AirTemperature or SensorKind.AirHumidity or SensorKind.LightLevel;
        partKey = Key.Optional("part", Values.Name, "The part that measures it, by the name that the I/O section gives it.");
        oneWireKey = kind is SensorKind.WaterTemperature or SensorKind.AirTemperature
            ? Key.Optional(
                "one-wire", new OneWireCodeKind(), "The 1-wire thermometer that measures it, by its folder in /sys/bus/w1/devices.")
            : null;
        inputKey = isByItself ? null : Key.Optional("input", input, "The input of that part.");
        pointsKey = isByItself
            ? null
            : Key.Optional("points", Values.List(new CalibrationPointMapping(ValueOf(kind)), "point", 20), "What its voltages stand for.");
        if (kind == SensorKind.PumpFlow)
        {
            lineKeys = new LineKeys("The line of a flow meter that gives pulses.", activeDoc: null);
            pulsesKey = Key.Optional(
                "pulses-per-litre", new NumberKind("a number of pulses", 1, 100_000), "How many pulses that meter gives for a litre.");
        }
    }

    /// <summary>All of them.</summary>
    public ImmutableArray<Key> All =>
        [.. new Key?[] { partKey, oneWireKey, inputKey, pointsKey, pulsesKey }.OfType<Key>(), .. lineKeys?.All ?? []];

    /// <summary>Reads them.</summary>
    /// <param name="keys">A sound mapping that declares these keys.</param>
    /// <returns>Null where none is written.</returns>
    public ProbePart? Read(MappingReader keys) => !All.Any(keys.IsWritten)
        ? null
        : new ProbePart(
            keys.Place, keys.Find(partKey), inputKey is null ? null : keys.FindValue(inputKey),
            pointsKey is not null && keys.Has(pointsKey) ? keys.Get(pointsKey) : [],
            oneWireKey is null ? null : keys.Find(oneWireKey), lineKeys?.Read(keys),
            pulsesKey is null ? null : keys.FindValue(pulsesKey));

    private static QuantityKind ValueOf(SensorKind kind) => kind switch
    {
        SensorKind.WaterTemperature => new QuantityKind(Dimensions.Temperature, "-40 °C", "125 °C"),
        SensorKind.CircuitCurrent or SensorKind.PumpCurrent => new QuantityKind(Dimensions.Current, "0 A", "400 A"),
        SensorKind.PumpFlow => Values.Flow,
        _ => Values.Length,
    };
}

/// <summary>Reads what a voltage stands for.</summary>
/// <param name="value">What is measured.</param>
internal sealed class CalibrationPointMapping(QuantityKind value) : Mapping<CalibrationPoint>
{
    private readonly Key<double> atKey = Key.Required(
        "at", new QuantityKind(Dimensions.Voltage, "0 V", "4 V"), "A voltage at the input.");

    private readonly Key<double> isKey = Key.Required("is", value, "What it stands for.");

    /// <inheritdoc/>
    public override string Name => "calibration point";

    /// <inheritdoc/>
    public override string Doc => "A voltage and what it stands for.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [atKey, isKey];

    /// <inheritdoc/>
    protected override CalibrationPoint? Build(MappingReader keys) => new(keys.Get(atKey), keys.Get(isKey));
}

/// <summary>The name of a thermometer on a 1-wire bus.</summary>
internal sealed partial class OneWireCodeKind : ScalarKind<string>
{
    /// <inheritdoc/>
    public override string Expected => "a 1-wire name, such as `28-0316a2794bff`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = Code().ToString(),
        ["examples"] = new JsonArray("28-0316a2794bff"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return Code().IsMatch(text) ? null : new Misfit("not the name of a 1-wire thermometer", "copy it from /sys/bus/w1/devices");
    }

    // The families of thermometers that the kernel knows: DS18S20, DS1822, DS18B20, DS1825 and DS28EA00 (w1_therm.rst of Linux).
    [GeneratedRegex("^(10|22|28|3b|42)-[0-9a-f]{12}$")]
    private static partial Regex Code();
}
