using RackController.Model;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>The kinds of value that several keys of the rack file share.</summary>
internal static class Values
{
    public static TextKind Name { get; } = new("a name", "/:`\"");

    public static TextKind Label { get; } = new("a label", "`\"");

    /// <summary>A GPIO chip, or a part with lines.</summary>
    public static ChipKind Chip { get; } = new();

    /// <summary>A line of a GPIO chip.</summary>
    public static LineKind Line { get; } = new();

    public static FlagKind Flag { get; } = new();

    public static LocalTimeKind TimeOfDay { get; } = new();

    public static QuantityKind Length { get; } = new(Dimensions.Length, "0 mm", "10 m");

    public static QuantityKind Bore { get; } = new(Dimensions.Length, "2 mm", "200 mm");

    public static QuantityKind Volume { get; } = new(Dimensions.Volume, "1 L", "5000 L");

    public static QuantityKind Flow { get; } = new(Dimensions.Flow, "0 L/min", "1000 L/min");

    public static QuantityKind Head { get; } = new(Dimensions.Length, "0 mm", "50 m");

    public static QuantityKind Power { get; } = new(Dimensions.Power, "0.1 W", "10 kW");

    public static QuantityKind Current { get; } = new(Dimensions.Current, "1 mA", "100 A");

    public static NumberKind MinorLoss { get; } = new("a minor loss coefficient", 0, 10_000);

    public static ChoiceKind<SwitchState> SwitchState { get; } =
        new([("off", Model.SwitchState.Off), ("on", Model.SwitchState.On)]);

    public static ChoiceKind<RelayContact> Contact { get; } =
        new([("normally-open", RelayContact.NormallyOpen), ("normally-closed", RelayContact.NormallyClosed)]);

    /// <summary>Whether a line is active when low.</summary>
    public static ChoiceKind<bool> Active { get; } = new([("low", true), ("high", false)]);

    public static ChoiceKind<LinePull> Pull { get; } =
        new([("up", LinePull.Up), ("down", LinePull.Down), ("none", LinePull.None)]);

    public static DurationKind Duration(string least, string most, string why = "") => new(least, most, why);

    public static ListKind<T> List<T>(Binding.Kind<T> item, string itemName, int most) => new(item, itemName, most);
}
