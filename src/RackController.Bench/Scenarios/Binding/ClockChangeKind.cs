using System.Text.Json.Nodes;
using NodaTime;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>What can become of a wall clock.</summary>
internal enum ClockChangeKinds
{
    Steps,
    Right,
    Untrusted,
}

/// <summary>What becomes of the wall clock.</summary>
/// <param name="Kind">Which change.</param>
/// <param name="By">By how much it steps; negative is back.</param>
/// <param name="Words">As the scenario writes it.</param>
internal sealed record ClockChange(ClockChangeKinds Kind, Duration By, string Words);

/// <summary>Reads <c>back 1 h</c>, <c>ahead 20 min</c>, <c>untrusted</c> or <c>right</c>.</summary>
internal sealed class ClockChangeKind : Kind<ClockChange>
{
    private readonly DurationKind step = new("1 s", "366 d", "");

    public override string Expected => "`back 1 h`, `ahead 20 min`, `untrusted` or `right`";

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };

    public override bool TryRead(
        string name, Node node, Complaints complaints, [System.Diagnostics.CodeAnalysis.MaybeNullWhen(false)] out ClockChange value)
    {
        var text = node is ScalarNode scalar ? scalar.Text.Trim() : "";
        var back = text.StartsWith("back ", StringComparison.Ordinal);
        value = text switch
        {
            "right" => new ClockChange(ClockChangeKinds.Right, Duration.Zero, text),
            "untrusted" => new ClockChange(ClockChangeKinds.Untrusted, Duration.Zero, text),
            _ => null,
        };
        if (value is not null)
        {
            return true;
        }

        if (!back && !text.StartsWith("ahead ", StringComparison.Ordinal))
        {
            complaints.Refuse(node.Place, $"`{name}` is {Quote.Text(text)}", $"write {Expected}");
            return false;
        }

        var amount = new ScalarNode(node.Place, text[(text.IndexOf(' ', StringComparison.Ordinal) + 1)..], false);
        if (!step.TryRead(name, amount, complaints, out var by))
        {
            return false;
        }

        value = new ClockChange(ClockChangeKinds.Steps, back ? -by : by, text);
        return true;
    }
}
