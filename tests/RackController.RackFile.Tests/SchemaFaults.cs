using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Tests;

/// <summary>What an independent validator finds wrong with a file of ours by its JSON Schema. The tests of every reader that has one
/// compile it.</summary>
internal static class SchemaFaults
{
    /// <summary>Finds it; empty when nothing is wrong.</summary>
    public static List<string> Of(JsonSchema schema, string yaml)
    {
        var complaints = new Complaints("file.yaml");
        var root = YamlText.Read(yaml, complaints);
        Assert.NotNull(root);
        using var document = JsonDocument.Parse(ToJson(root).ToJsonString());
        var results = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid
            ? []
            : [.. results.Details!.Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Values)];
    }

    /// <summary>As an editor sees it: plain scalars by the core schema of YAML 1.2.</summary>
    private static JsonNode ToJson(Node node) => node switch
    {
        MappingNode mapping =>
            new JsonObject(mapping.Entries.Select(entry => KeyValuePair.Create(entry.Key, (JsonNode?)ToJson(entry.Value)))),
        ListNode list => new JsonArray([.. list.Items.Select(ToJson)]),
        ScalarNode { IsQuoted: false, Text: "true" or "false" } scalar => scalar.Text == "true",
        ScalarNode { IsQuoted: false } scalar when double.TryParse(scalar.Text, CultureInfo.InvariantCulture, out var number) =>
            number,
        ScalarNode scalar => scalar.Text,
        _ => throw new InvalidOperationException("a node of no kind"),
    };
}
