using System.Globalization;
using System.Text.Json.Nodes;
using RackController.Model;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A fitted figure with half its 95 % interval: <c>0.87 +/- 0.02</c>.</summary>
/// <param name="noun">With its article: <c>a share</c>.</param>
/// <param name="least">The least that can be meant.</param>
/// <param name="most">The most.</param>
public sealed class MeasuredKind(string noun, double least, double most) : ScalarKind<MeasuredFigure>
{
    private const string Mark = "+/-";

    /// <inheritdoc/>
    public override string Expected => string.Create(
        CultureInfo.InvariantCulture, $"{noun} from {least} to {most} with half its 95 % interval, such as `0.87 {Mark} 0.02`");

    /// <summary>A figure as it is written.</summary>
    /// <param name="figure">The figure.</param>
    public static string Text(MeasuredFigure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return string.Create(CultureInfo.InvariantCulture, $"{figure.Value:0.###} {Mark} {figure.Within:0.###}");
    }

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = "^[0-9]+(\\.[0-9]+)? *\\+/- *[0-9]+(\\.[0-9]+)?$",
        ["examples"] = new JsonArray("0.87 +/- 0.02"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out MeasuredFigure value)
    {
        value = new MeasuredFigure(0, 0);
        var parts = text.Split(Mark);
        if (parts.Length != 2 || !IsNumber(parts[0], out var figure) || !IsNumber(parts[1], out var within))
        {
            return new Misfit("not a figure with its interval");
        }

        value = new MeasuredFigure(figure, within);
        return figure < least || figure > most ? new Misfit("out of range")
            : within >= figure && figure > 0 ? new Misfit("which is to know nothing of it", "remove it, or measure more floods with `tune`")
            : null;
    }

    private static bool IsNumber(string text, out double number) =>
        NumberText.TrySplit(text.Trim(), out number, out var rest) && rest.Length == 0 && number >= 0;
}
