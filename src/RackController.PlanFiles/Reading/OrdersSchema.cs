using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>The JSON Schema (draft 2020-12) of the orders file, made of the same declarations that the reader uses.</summary>
public static class OrdersSchema
{
    /// <summary>The schema as indented JSON text with a line end.</summary>
    public static string ToJson() => SchemaWriter.ToJson("Orders file of RackController", OrdersReader.Mapping);
}
