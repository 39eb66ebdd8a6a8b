using System.Text.Json.Nodes;
using Json.Schema;
using RackController.RackFile.Tests;
using RackController.Testing;

namespace RackController.PlanFiles.Tests;

/// <summary>An independent validator (JsonSchema.Net, draft 2020-12) agrees with the readers on what orders and crops are.</summary>
public sealed class PlanFileSchemaTests
{
    private static readonly JsonSchema orders = JsonSchema.FromText(OrdersSchema.ToJson());
    private static readonly JsonSchema crops = JsonSchema.FromText(CropsSchema.ToJson());

    private static readonly string demo = File.ReadAllText(ShippedFiles.PathTo("config/demo-orders.yaml"));
    private static readonly string shipped = File.ReadAllText(ShippedFiles.PathTo("config/crops.yaml"));

    [Fact]
    public void TheShippedFilesAreValid()
    {
        Assert.Empty(SchemaFaults.Of(orders, demo));
        Assert.Empty(SchemaFaults.Of(crops, shipped));
    }

    [Theory]
    [InlineData("margin: 10 %", "margin: 10 kg")]
    [InlineData("work-days: [mon,", "work-days: [moonday,")]
    [InlineData("blackout: { trays: 24 }", "blackout: { shelves: 24 }")]
    [InlineData("weight: 900 g", "weight: 900")]
    [InlineData("racks: demo-three-racks.yaml\n", "")]
    public void WhatTheOrdersReaderRefusesTheirSchemaRefuses(string old, string replacement)
    {
        var text = With(demo, old, replacement);

        Assert.NotEmpty(SchemaFaults.Of(orders, text));
        Assert.Contains(Orders.Complaints(text, head: ""), complaint => !complaint.Contains("cannot be used", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("kind: microgreen", "kind: weed")]
    [InlineData("dark: 3 to 4 d", "dark: dusk")]
    [InlineData("seed: 9 g", "seed: 9 mm")]
    [InlineData("floods: 1 to 2", "flods: 1 to 2")]
    public void WhatTheCropsReaderRefusesTheirSchemaRefuses(string old, string replacement)
    {
        var text = With(shipped, old, replacement);

        Assert.NotEmpty(SchemaFaults.Of(crops, text));
        Assert.NotEmpty(CropFiles.Read(text).Complaints);
    }

    [Fact]
    public void EveryKeyIsExplained() => Assert.All(
        ((string[])[OrdersSchema.ToJson(), CropsSchema.ToJson()]).Select(text => JsonNode.Parse(text)!.AsObject())
            .SelectMany(schema => schema["$defs"]!.AsObject().Select(definition => definition.Value!).Append(schema))
            .SelectMany(one => new[] { one["properties"], one["anyOf"]?.AsArray().LastOrDefault()?["properties"] })
            .OfType<JsonObject>().SelectMany(one => one),
        property => Assert.NotEmpty((string?)property.Value!["description"] ?? ""));

    private static string With(string text, string old, string replacement)
    {
        var at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.InRange(at, 0, text.Length);
        return text[..at] + replacement + text[(at + old.Length)..];
    }
}
