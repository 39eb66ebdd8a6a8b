using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A relay's or contact's line as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="Line">Which line of the chip.</param>
/// <param name="Chip">The chip, when it is not the one of the I/O section.</param>
/// <param name="ActiveLow">Its polarity, when it is not the one of the I/O section.</param>
internal sealed record LinePart(Place Place, WrittenLine Line, string? Chip, bool? ActiveLow);

/// <summary>A load as written: what a relay switches and how it is wired.</summary>
internal sealed record LoadPart
{
    public required Place Place { get; init; }

    public required LoadKind Kind { get; init; }

    /// <summary>Its name within the rack: <c>pump</c>, <c>tier 2 light</c>.</summary>
    public string ShortName { get; init; } = "";

    public int? TierNumber { get; init; }

    public double? PowerW { get; init; }

    public double? CurrentA { get; init; }

    public required double PowerFactor { get; init; }

    public required double InrushMultiple { get; init; }

    public required int Priority { get; init; }

    public required SwitchState SafeState { get; init; }

    public required RelayContact Contact { get; init; }

    public required Place ContactPlace { get; init; }

    public required int RatedOperations { get; init; }

    public string? Circuit { get; init; }

    public required Place CircuitPlace { get; init; }

    public LinePart? Line { get; init; }

    /// <summary>Running current on a supply, A.</summary>
    public double CurrentOn(double voltageV) => CurrentA ?? PowerW!.Value / (voltageV * PowerFactor);

    /// <summary>Real power on a supply, W.</summary>
    public double PowerOn(double voltageV) => PowerW ?? CurrentA!.Value * voltageV * PowerFactor;
}

/// <summary>The keys that every load has, with the defaults of its kind.</summary>
/// <param name="kind">What it does for the crop.</param>
/// <param name="powerFactor">Common practice, no source: drivers with correction 0.95, shaded-pole motors 0.6.</param>
/// <param name="inrush">Common practice, no source: small motors 4 to 8 times, light drivers up to 100 times.</param>
/// <param name="priority">As the model's defaults say.</param>
/// <param name="safeState">The state that hurts least.</param>
internal sealed class LoadKeys(LoadKind kind, string powerFactor, string inrush, string priority, string safeState)
{
    public static LoadKeys Pump { get; } = new(LoadKind.Pump, "0.6", "6", "3", "off");

    public static LoadKeys Valve { get; } = new(LoadKind.Valve, "1", "1", "3", "off");

    public static LoadKeys Light { get; } = new(LoadKind.Light, "0.95", "40", "5", "off");

    public static LoadKeys Fan { get; } = new(LoadKind.Fan, "0.6", "5", "2", "on");

    public static LoadKeys Aerator { get; } = new(LoadKind.Aerator, "0.6", "5", "1", "on");

    private readonly Key<double> powerKey =
        Key.Optional("power", Values.Power, "Real power by its nameplate. Write this or `current`.");

    private readonly Key<double> currentKey = Key.Optional(
        "current", Values.Current, "Running current by its nameplate, at the circuit's voltage. Write this or `power`.");

    private readonly Key<double> powerFactorKey = Key.Defaulted(
        "power-factor", new NumberKind("a power factor", 0.1, 1), powerFactor, "Real power over apparent power.");

    private readonly Key<double> inrushKey = Key.Defaulted(
        "inrush", new NumberKind("an inrush multiple", 1, 150), inrush,
        "Current in the first moments after switching on, as a multiple of the running current.");

    private readonly Key<int> priorityKey = Key.Defaulted(
        "priority", new WholeNumberKind("a priority", 1, 9), priority,
        "Who goes last when a circuit cannot carry everything: 1 is most important, 9 least.");

    private readonly Key<SwitchState> safeStateKey = Key.Defaulted(
        "safe-state", Values.SwitchState, safeState, "The state that hurts least when the controller cannot judge.");

    private readonly Key<RelayContact> contactKey = Key.Optional(
        "contact", Values.Contact,
        "Through which contact of its relay it is wired. Without it: normally-closed where the safe state is on, else normally-open.");

    private readonly Key<int> operationsKey = Key.Defaulted(
        "rated-operations", new WholeNumberKind("a count of operations", 100, 100_000_000), "100000",
        "How often its relay may switch on and off before it counts as worn, by its data sheet at such a load.");

    private readonly Key<string> circuitKey = Key.Optional(
        "circuit", Values.Name, "The circuit it draws from. Without it: the circuit of its rack.");

    private readonly LineKeys lineKeys =
        new("The relay's channel; with GPIO its line.", "Whether a low or a high level energises the coil.");

    /// <summary>All of them.</summary>
    public ImmutableArray<Key> All =>
        [
            powerKey, currentKey, powerFactorKey, inrushKey, priorityKey, safeStateKey, contactKey, operationsKey, circuitKey,
            .. lineKeys.All,
        ];

    /// <summary>Reads a load.</summary>
    /// <param name="keys">A sound mapping that declares these keys.</param>
    public LoadPart? Read(MappingReader keys)
    {
        var (power, current) = (keys.FindValue(powerKey), keys.FindValue(currentKey));
        if (power is null == current is null)
        {
            keys.Complaints.Refuse(
                keys.Place, power is null ? "a load without power or current" : "both power and current",
                "write one of them, as the nameplate does: `power: 45 W` or `current: 0.4 A`");
            return null;
        }

        var safeState = keys.Get(safeStateKey);
        return new LoadPart
        {
            Place = keys.Place,
            Kind = kind,
            PowerW = power,
            CurrentA = current,
            PowerFactor = keys.Get(powerFactorKey),
            InrushMultiple = keys.Get(inrushKey),
            Priority = keys.Get(priorityKey),
            SafeState = safeState,
            Contact = keys.FindValue(contactKey)
                ?? (safeState == SwitchState.On ? RelayContact.NormallyClosed : RelayContact.NormallyOpen),
            ContactPlace = keys.At(contactKey),
            RatedOperations = keys.Get(operationsKey),
            Circuit = keys.Find(circuitKey),
            CircuitPlace = keys.At(circuitKey),
            Line = lineKeys.Read(keys),
        };
    }
}
