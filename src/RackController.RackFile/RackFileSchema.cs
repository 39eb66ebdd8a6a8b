using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>The JSON Schema (draft 2020-12) of the rack file, made of the same declarations that the reader uses.</summary>
public static class RackFileSchema
{
    /// <summary>The schema as indented JSON text with a line end.</summary>
    public static string ToJson() => SchemaWriter.ToJson("Rack file of RackController", SiteMapping.Instance);
}
