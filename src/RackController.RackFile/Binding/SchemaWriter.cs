using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RackController.RackFile.Binding;

/// <summary>Collects the definitions of a JSON Schema (draft 2020-12) while kinds describe themselves.</summary>
public sealed class SchemaWriter
{
    /// <summary>For people and version control; the text goes into no page, so only JSON itself is escaped.</summary>
    private static readonly JsonWriterOptions layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly SortedDictionary<string, JsonObject?> definitions = new(StringComparer.Ordinal);

    /// <summary>Describes a whole file, as indented JSON text with a line end.</summary>
    /// <typeparam name="T">What the file is read into.</typeparam>
    /// <param name="title">What the file is.</param>
    /// <param name="root">The mapping that the file is.</param>
    public static string ToJson<T>(string title, Mapping<T> root)
        where T : class
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, layout))
        {
            Describe(title, root).WriteTo(writer);
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static JsonObject Describe<T>(string title, Mapping<T> root)
        where T : class
    {
        var writer = new SchemaWriter();
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
        };
        foreach (var (name, value) in root.DescribeKeys(writer))
        {
            schema[name] = value?.DeepClone();
        }

        var definitions = new JsonObject();
        foreach (var (name, definition) in writer.definitions)
        {
            definitions[name] = definition;
        }

        schema["$defs"] = definitions;
        return schema;
    }

    /// <summary>Refers to a definition, which is written the first time that it is asked for.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="describe">Writes it.</param>
    public JsonObject Reference(string name, Func<JsonObject> describe)
    {
        if (!definitions.ContainsKey(name))
        {
            definitions[name] = null;
            definitions[name] = describe();
        }

        return new JsonObject { ["$ref"] = $"#/$defs/{name}" };
    }
}
