using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using RackController.RackFile.Binding;

namespace RackController.Bench.Binding;

/// <summary>How a number should compare: <c>above 45 mm</c>, <c>below 20 L</c>, <c>between 2 and 4</c>, <c>exactly 3</c>,
/// <c>at least 10 mol/m2/d</c>, <c>at most 1 L</c>.</summary>
/// <param name="number">Reads one number.</param>
/// <param name="scale">From what that reads to the unit of the measure.</param>
internal sealed class ComparisonKind(Kind<double> number, double scale) : Kind<Comparison>
{
    public override string Expected =>
        $"`above`, `below`, `at least`, `at most` or `exactly` and {number.Expected}, or `between` two of them joined by `and`";

    public override bool TryRead(
        string name, Node node, Complaints complaints, [MaybeNullWhen(false)] out Comparison value)
    {
        value = null;
        var (how, rest) = Words(node is ScalarNode written ? written.Text.Trim() : "");
        if (node is not ScalarNode scalar || how.Length == 0)
        {
            complaints.Refuse(node.Place, $"`{name}` is no comparison", $"write {Expected}");
            return false;
        }

        var ends = how == "between" ? rest.Split(" and ", 2, StringSplitOptions.TrimEntries) : [rest];
        if (how == "between" && ends.Length != 2)
        {
            complaints.Refuse(node.Place, $"`{name}` lacks its second number", $"write {Expected}");
            return false;
        }

        var numbers = new double[ends.Length];
        for (var i = 0; i < ends.Length; i++)
        {
            if (!number.TryRead(name, scalar with { Text = ends[i] }, complaints, out var read))
            {
                return false;
            }

            numbers[i] = read * scale;
        }

        value = Make(how, numbers);
        return true;
    }

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };

    private static Comparison Make(string how, double[] numbers) => how switch
    {
        "above" => new Above(numbers[0]),
        "below" => new Below(numbers[0]),
        "at least" => new Between(numbers[0], double.PositiveInfinity),
        "at most" => new Between(double.NegativeInfinity, numbers[0]),
        "exactly" => new Between(numbers[0], numbers[0]),
        _ => new Between(Math.Min(numbers[0], numbers[1]), Math.Max(numbers[0], numbers[1])),
    };

    private static (string How, string Number) Words(string text)
    {
        foreach (var how in (ReadOnlySpan<string>)["above", "below", "at least", "at most", "exactly", "between"])
        {
            if (text.StartsWith(how + " ", StringComparison.Ordinal))
            {
                return (how, text[how.Length..].Trim());
            }
        }

        return ("", text);
    }
}
