using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace RackController.Page.Tests;

/// <summary>The OpenAPI document that describes what programs read and ask: JSON Schema 2020-12, judged by a library.</summary>
internal static class ApiDocument
{
    /// <summary>What keeps a text from being what the document calls by a name; empty when nothing does.</summary>
    public static async Task<string> ComplaintAsync(HttpClient client, string schema, string text)
    {
        var document = JsonNode.Parse(await client.GetStringAsync("/api/openapi.json"))!;
        var whole = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$ref"] = $"#/components/schemas/{schema}",
            ["components"] = document["components"]!.DeepClone(),
        };
        var result = JsonSchema.FromText(whole.ToJsonString())
            .Evaluate(JsonDocument.Parse(text).RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        var complaints = (result.Details ?? []).Where(at => at.Errors is not null)
            .SelectMany(at => at.Errors!.Select(error => $"{at.InstanceLocation}: {error.Value}"));
        return result.IsValid ? "" : string.Join('\n', complaints.Append($"{text[..Math.Min(200, text.Length)]} is not a {schema}"));
    }
}
