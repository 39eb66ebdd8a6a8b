using System.Globalization;

namespace RackController.Model;

/// <summary>
/// The units that people are shown figures in, which the grower chooses. Inside, and wherever programs read, figures stay in the units
/// that their names say.
/// </summary>
public sealed class ShownUnits
{
    // One inch is 25.4 mm exactly, one US gallon 231 cubic inches, t/°F = 1.8 t/°C + 32: NIST Special Publication 811, appendix B.8.
    private const double MmPerInch = 25.4;
    private const double LitresPerGallon = 231 * MmPerInch * MmPerInch * MmPerInch / 1e6;

    private readonly Dictionary<string, ShownUnit> others;

    private ShownUnits(params ReadOnlySpan<(string Metric, ShownUnit Shown)> others) =>
        this.others = others.ToArray().ToDictionary(other => other.Metric, other => other.Shown);

    /// <summary>Millimetres, litres and degrees Celsius.</summary>
    public static ShownUnits Metric { get; } = new();

    /// <summary>Inches, US gallons and degrees Fahrenheit.</summary>
    public static ShownUnits UsCustomary { get; } = new(
        ("mm", new ShownUnit("in", 1 / MmPerInch, 0, 1)),
        ("L", new ShownUnit("gal", 1 / LitresPerGallon, 0, 1)),
        ("L/min", new ShownUnit("gal/min", 1 / LitresPerGallon, 0, 1)),
        ("°C", new ShownUnit("°F", 1.8, 32, 0)));

    /// <summary>What figures of a unit are shown in; the unit itself where nothing else is chosen.</summary>
    /// <param name="unit">The unit of a figure, such as <c>mm</c>.</param>
    public ShownUnit Of(string unit) => others.GetValueOrDefault(unit) ?? new ShownUnit(unit, 1, 0, 0);
}

/// <summary>A unit that figures are shown in.</summary>
/// <param name="Symbol">Its symbol.</param>
/// <param name="Factor">How many of it are one of the figure's own unit.</param>
/// <param name="Offset">What is added after that, in this unit.</param>
/// <param name="MoreDecimals">How many decimals more it takes to say a figure as finely as before.</param>
public sealed record ShownUnit(string Symbol, double Factor, double Offset, int MoreDecimals)
{
    /// <summary>A figure in this unit.</summary>
    /// <param name="value">The figure in its own unit.</param>
    public double From(double value) => value * Factor + Offset;

    /// <summary>The number alone, in this unit.</summary>
    /// <param name="value">The figure in its own unit.</param>
    /// <param name="decimals">How many decimals it would have there.</param>
    public string Number(double value, int decimals) =>
        From(value).ToString($"F{decimals + MoreDecimals}", CultureInfo.InvariantCulture);

    /// <summary>The number and the unit.</summary>
    /// <param name="value">The figure in its own unit.</param>
    /// <param name="decimals">How many decimals it would have there.</param>
    public string Words(double value, int decimals) => $"{Number(value, decimals)} {Symbol}";

    /// <summary>The number and the unit, without zeros at the end of a fraction: for what a person chose.</summary>
    /// <param name="value">The figure in its own unit.</param>
    public string Limit(double value) =>
        $"{From(value).ToString("0." + new string('#', 1 + MoreDecimals), CultureInfo.InvariantCulture)} {Symbol}";
}
