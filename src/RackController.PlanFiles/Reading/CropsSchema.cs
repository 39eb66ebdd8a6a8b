using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>The JSON Schema (draft 2020-12) of the crops file, made of the same declarations that the reader uses.</summary>
public static class CropsSchema
{
    /// <summary>The schema as indented JSON text with a line end.</summary>
    public static string ToJson() => SchemaWriter.ToJson("Crops file of RackController", CropsReader.Mapping);
}
