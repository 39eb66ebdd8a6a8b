using System.Text.Json.Nodes;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>The path of another file.</summary>
internal sealed class PathKind : ScalarKind<string>
{
    private const int Longest = 1000;

    public override string Expected => "the path of a rack file, such as `../cellar.yaml`";

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };

    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return text.Length > Longest ? new Misfit("too long") : text.Contains('\0', StringComparison.Ordinal) ? new Misfit("") : null;
    }
}
