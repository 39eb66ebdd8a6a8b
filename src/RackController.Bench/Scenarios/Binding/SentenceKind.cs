using System.Text.Json.Nodes;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>A sentence or two for people.</summary>
internal sealed class SentenceKind : ScalarKind<string>
{
    private const int Longest = 600;

    public override string Expected => $"a sentence of at most {Longest} letters";

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string", ["maxLength"] = Longest };

    protected override Misfit? Parse(string text, out string value)
    {
        value = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return value.Length > Longest ? new Misfit("too long")
            : value.Any(char.IsControl) ? new Misfit("with a letter that cannot stand there")
            : null;
    }
}
