using System.Text.Json;
using System.Text.Json.Nodes;

namespace RackController.Bench;

/// <summary>JSON for files that people look into as well.</summary>
internal static class IndentedJson
{
    private static readonly JsonSerializerOptions indented = new() { WriteIndented = true };

    /// <summary>Writes it, with a line for each member and a line's end.</summary>
    public static string Of(JsonObject document) => document.ToJsonString(indented) + "\n";
}
