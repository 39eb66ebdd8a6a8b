using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A number with its unit, read into the dimension's base unit.</summary>
/// <param name="dimension">What is measured.</param>
/// <param name="least">The smallest value that can be meant, as it would be written.</param>
/// <param name="most">The largest.</param>
public sealed class QuantityKind(Dimension dimension, string least, string most) : ScalarKind<double>
{
    /// <inheritdoc/>
    public override string Expected => $"{dimension.Noun} ({dimension.UnitNames}), such as `{dimension.Example}`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = $"^[-+]?[0-9][0-9 ./]*({string.Join('|', dimension.Units.Select(unit => Regex.Escape(unit.Text)))})$",
        ["examples"] = new JsonArray(dimension.Example),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out double value)
    {
        if (Convert(dimension, text, out value) is { } misfit)
        {
            return misfit;
        }

        return value < Bound(least) || value > Bound(most)
            ? new Misfit($"outside {least} to {most}", "check the number and its unit")
            : null;
    }

    /// <summary>Reads a text as this kind would.</summary>
    /// <param name="text">The text.</param>
    /// <param name="value">What was read.</param>
    internal Misfit? ParseText(string text, out double value) => Parse(text, out value);

    internal static Misfit? Convert(Dimension dimension, string text, out double value)
    {
        value = 0;
        if (!NumberText.TrySplit(text, out var number, out var unitText))
        {
            var hasDecimalComma = text.Contains(',', StringComparison.Ordinal);
            return new Misfit(
                "not a number with a unit", hasDecimalComma ? "write decimals with a point and thousands without a sign" : null);
        }

        if (unitText.Length == 0)
        {
            return new Misfit("without a unit", $"write the unit: {dimension.UnitNames}, such as `{dimension.Example}`");
        }

        if (dimension.Find(unitText) is not { } unit)
        {
            return new Misfit(Dimensions.NounOf(unitText) is { } noun
                ? $"which is {noun}"
                : $"with the unknown unit {Quote.Text(unitText)}");
        }

        value = unit.ToBase(number);
        return null;
    }

    private double Bound(string text)
    {
        Convert(dimension, text, out var bound);
        return bound;
    }
}
