using System.Text.Encodings.Web;
using System.Text.Json;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>The JSON Schema (draft 2020-12) of the rack file, made of the same declarations that the reader uses.</summary>
public static class RackFileSchema
{
    /// <summary>For people and version control; the text goes into no page, so only JSON itself is escaped.</summary>
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The schema as indented JSON text with a line end.</summary>
    public static string ToJson()
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Layout))
        {
            SchemaWriter.Describe("Rack file of RackController", SiteMapping.Instance).WriteTo(writer);
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }
}
