using System.Text.Json.Nodes;
using RackController.Control;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>The key of an alarm: a place and, after the last <c>/</c>, the row of the cause-and-effect table. The row is
/// checked here, since an alarm that does not exist would never be raised, which an expectation might mistake for peace.</summary>
/// <param name="orAny">Whether <c>any</c> may stand for whichever alarm is there.</param>
internal sealed class AlarmKeyKind(bool orAny) : ScalarKind<string>
{
    private static readonly string[] Rows =
        [.. CauseAndEffectTable.Rows.Where(row => row.Alarm is not null).Select(row => row.Id)];

    public override string Expected =>
        $"a place, a slash and one of {string.Join(", ", Rows)}, such as `north/low-float`{(orAny ? ", or `any`" : "")}";

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };

    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        var slash = text.LastIndexOf('/');
        var isAny = orAny && text == AlarmIs.Any;
        return isAny || (slash > 0 && Rows.Contains(text[(slash + 1)..])) ? null : new Misfit("which names no alarm");
    }
}
