using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>From one quantity to another: <c>12 to 16 h</c>; one alone is both.</summary>
/// <param name="dimension">What is measured.</param>
/// <param name="least">The least that can be meant, in the dimension's base unit.</param>
/// <param name="most">The most.</param>
internal sealed class RangeKind(Dimension dimension, double least, double most) : ScalarKind<Bounds>
{
    /// <inheritdoc/>
    public override string Expected => $"{dimension.Noun} or a range of it ({dimension.UnitNames}), such as `{dimension.Example}`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = $"{RangeText.NumbersPattern} *({string.Join('|', dimension.Units.Select(unit => Regex.Escape(unit.Text)))})$",
        ["examples"] = new JsonArray(dimension.Example),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out Bounds value)
    {
        value = default;
        if (!RangeText.TrySplit(text, out var from, out var to, out var unitText))
        {
            return new Misfit("not a number with a unit, nor one number to another");
        }

        if (dimension.Find(unitText) is not { } unit)
        {
            return new Misfit(unitText.Length == 0 ? "without a unit"
                : Dimensions.NounOf(unitText) is { } noun ? $"which is {noun}"
                : $"with the unknown unit {Quote.Text(unitText)}");
        }

        value = new Bounds(unit.ToBase(from), unit.ToBase(to));
        return !(value.Least <= value.Most) ? new Misfit("from more to less", "write the smaller number first")
            : value.Least < least || value.Most > most
                ? new Misfit(string.Create(CultureInfo.InvariantCulture, $"outside {least} to {most} {dimension.Units[0].Text}"),
                    "check the number and its unit")
            : null;
    }
}

/// <summary>From one whole number to another: <c>1 to 3</c>; one alone is both.</summary>
/// <param name="noun">With its article: <c>a number of floods a day</c>.</param>
/// <param name="unit">The unit that may follow, or has to; empty for a bare count.</param>
/// <param name="most">The most that can be meant; the least is 0.</param>
internal sealed class WholeRangeKind(string noun, string unit, int most) : ScalarKind<WholeBounds>
{
    /// <inheritdoc/>
    public override string Expected => $"{noun} or a range of it, such as `1 to 3{(unit.Length > 0 ? $" {unit}" : "")}`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = unit.Length > 0 ? "string" : new JsonArray("string", "integer"),
        ["pattern"] = $"{RangeText.NumbersPattern} *{Regex.Escape(unit)}$",
        ["minimum"] = 0,
        ["maximum"] = most,
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out WholeBounds value)
    {
        value = default;
        if (!RangeText.TrySplit(text, out var from, out var to, out var unitText) || from != Math.Floor(from) || to != Math.Floor(to))
        {
            return new Misfit("not a whole number, nor one whole number to another");
        }

        if (unitText != unit)
        {
            return new Misfit(unitText.Length == 0 ? "without a unit" : $"with the unit {Quote.Text(unitText)}");
        }

        if (from > to || to > most)
        {
            return from > to ? new Misfit("from more to less", "write the smaller number first") : new Misfit($"more than {most}");
        }

        value = new WholeBounds((int)from, (int)to);
        return null;
    }
}

/// <summary>Splits texts such as <c>12 to 16 h</c>.</summary>
internal static partial class RangeText
{
    /// <summary>The numbers at the beginning of one, as a JSON Schema says it.</summary>
    public const string NumbersPattern = @"^-?[0-9]{1,6}(\.[0-9]{1,6})?( +to +-?[0-9]{1,6}(\.[0-9]{1,6})?)?";

    /// <summary>Splits one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="from">The first number.</param>
    /// <param name="to">The second; the first where there is one only.</param>
    /// <param name="unit">What follows; empty where nothing does.</param>
    public static bool TrySplit(string text, out double from, out double to, out string unit)
    {
        var match = Pattern().Match(text);
        from = match.Success ? Number(match, "from") : 0;
        to = match.Groups["to"].Success ? Number(match, "to") : from;
        unit = match.Groups["unit"].Value;
        return match.Success;
    }

    private static double Number(Match match, string group) =>
        double.Parse(match.Groups[group].Value, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<from>-?\d{1,6}(\.\d{1,6})?)( +to +(?<to>-?\d{1,6}(\.\d{1,6})?))? *(?<unit>[^\d\s-][^\s]{0,11})?$",
            RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
