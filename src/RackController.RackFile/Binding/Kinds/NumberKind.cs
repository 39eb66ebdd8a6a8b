using System.Globalization;
using System.Text.Json.Nodes;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A number without a unit: a count, a factor or a coefficient.</summary>
/// <param name="noun">With its article: <c>a power factor</c>.</param>
/// <param name="least">The smallest that can be meant.</param>
/// <param name="most">The largest.</param>
public sealed class NumberKind(string noun, double least, double most) : ScalarKind<double>
{
    /// <inheritdoc/>
    public override string Expected =>
        string.Create(CultureInfo.InvariantCulture, $"{noun}, from {least} to {most}, without a unit");

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "number",
        ["minimum"] = least,
        ["maximum"] = most,
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out double value)
    {
        var isNumber = NumberText.TrySplit(text, out value, out var rest) && rest.Length == 0;
        return !isNumber ? new Misfit("not a plain number")
            : value < least || value > most ? new Misfit("out of range")
            : null;
    }
}

/// <summary>A whole number.</summary>
/// <param name="noun">With its article: <c>a line offset</c>.</param>
/// <param name="least">The smallest that can be meant.</param>
/// <param name="most">The largest.</param>
public sealed class WholeNumberKind(string noun, int least, int most) : ScalarKind<int>
{
    /// <inheritdoc/>
    public override string Expected =>
        string.Create(CultureInfo.InvariantCulture, $"{noun}, a whole number from {least} to {most}");

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "integer",
        ["minimum"] = least,
        ["maximum"] = most,
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out int value) =>
        !int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value)
            ? new Misfit("not a whole number")
            : value < least || value > most ? new Misfit("out of range")
            : null;
}
