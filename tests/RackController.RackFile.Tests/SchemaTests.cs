using System.Text.Json.Nodes;
using Json.Schema;

namespace RackController.RackFile.Tests;

/// <summary>An independent validator (JsonSchema.Net, draft 2020-12) agrees with the reader on what a rack file is.</summary>
public sealed class SchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RackFileSchema.ToJson());

    [Theory]
    [InlineData("demo-first-rack.yaml")]
    [InlineData("demo-four-tier.yaml")]
    [InlineData("demo-three-racks.yaml")]
    [InlineData("demo-two-tier.yaml")]
    [InlineData("demo-full-floats.yaml")]
    public void ADemoFileIsValid(string name) => Assert.Empty(Faults(File.ReadAllText(Files.Config(name))));

    [Theory]
    [InlineData("depth: 400 mm", "depth: 45 kg")]
    [InlineData("depth: 400 mm", "depth: 400")]
    [InlineData("depth: 400 mm", "deepness: 400 mm")]
    [InlineData("on: 06:00", "on: 6 am")]
    [InlineData("for: 16 h", "for: 16")]
    [InlineData("site: test cellar\n", "")]
    [InlineData("leak-rope: yes", "leak-rope: perhaps")]
    [InlineData("io: simulated", "io: imagined")]
    [InlineData("io: simulated", "io: simulated\nupkeep: { screen: 14 days }")]
    [InlineData("io: simulated", "io: simulated\nupkeep: { sieve: 14 d }")]
    public void WhatTheReaderRefusesTheSchemaRefuses(string old, string replacement)
    {
        var text = RackFiles.SmallWith(old, replacement);

        Assert.NotEmpty(Faults(text));
        Assert.Null(RackFileReader.Parse(text, "rack.yaml").Site);
    }

    [Fact]
    public void EveryKeyIsExplained()
    {
        var schema = JsonNode.Parse(RackFileSchema.ToJson())!.AsObject();
        var properties = schema["$defs"]!.AsObject()
            .Select(definition => definition.Value!)
            .Append(schema)
            .SelectMany(one => new[] { one["properties"], one["anyOf"]?.AsArray().LastOrDefault()?["properties"] })
            .OfType<JsonObject>()
            .SelectMany(one => one);

        Assert.All(properties, property => Assert.NotEmpty((string?)property.Value!["description"] ?? ""));
    }

    private static List<string> Faults(string yaml) => SchemaFaults.Of(Schema, yaml);
}
