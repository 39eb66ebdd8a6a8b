using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using RackController.Model;

namespace RackController.RackFile.Binding;

/// <summary>
/// Keys and values that belong together, read into one object. A subclass declares its keys and builds the object from
/// them; unknown, repeated and missing keys and values that do not fit are refused here, each with its place.
/// </summary>
/// <typeparam name="T">What it is read into.</typeparam>
public abstract class Mapping<T> : Kind<T>
    where T : class
{
    /// <summary>What it is called in complaints and in the schema: a noun without article.</summary>
    public abstract string Name { get; }

    /// <summary>What it is.</summary>
    public abstract string Doc { get; }

    /// <summary>The keys it may hold.</summary>
    public abstract ImmutableArray<Key> Keys { get; }

    /// <inheritdoc/>
    public override string Expected =>
        $"the keys of {Name} ({string.Join(", ", Keys.Select(key => key.Name).Take(20))})";

    /// <summary>The key that a plain value stands for; null when only a mapping will do.</summary>
    protected virtual Key? Shorthand => null;

    /// <summary>Whether to build even when a value did not fit, because its neighbours can be checked on their own. Then
    /// <see cref="Build"/> must ask <see cref="MappingReader.Has"/> before it gets a value.</summary>
    protected virtual bool BuildsFromParts => false;

    /// <inheritdoc/>
    public sealed override bool TryRead(
        string name, Node node, Complaints complaints, [MaybeNullWhen(false)] out T value)
    {
        value = null;
        if (node is not MappingNode mapping)
        {
            if (node is not ScalarNode { Text.Length: > 0 } || Shorthand is null)
            {
                complaints.Refuse(node.Place, $"`{name}` holds {Describe(node)}", $"write {Expected}");
                return false;
            }

            mapping = new MappingNode(node.Place, [new Entry(node.Place, Shorthand.Name, node)]);
        }

        var reader = new MappingReader(Name, Keys, mapping, complaints);
        if (reader.IsSound || BuildsFromParts)
        {
            value = Build(reader);
        }

        return value is not null;
    }

    /// <inheritdoc/>
    public sealed override JsonObject Describe(SchemaWriter schema) =>
        schema.Reference(Name.Replace(' ', '-'), () => DescribeWithShorthand(schema));

    /// <summary>What stands for the whole mapping when it is missing: every key by its default.</summary>
    /// <param name="place">Where it would stand.</param>
    public T FromDefaults(Place place)
    {
        var complaints = new Complaints(Name);
        var isSound = TryRead(Name, new MappingNode(place, []), complaints, out var value);
        Invariant.Holds(isSound && !complaints.HasErrors, $"{Name} has a default for every key");
        return value!;
    }

    /// <summary>Makes the object.</summary>
    /// <param name="keys">The values.</param>
    /// <returns>The object; null after a complaint.</returns>
    protected abstract T? Build(MappingReader keys);

    internal JsonObject DescribeKeys(SchemaWriter schema)
    {
        var properties = new JsonObject();
        foreach (var key in Keys)
        {
            properties[key.Name] = key.Describe(schema);
        }

        var described = new JsonObject
        {
            ["description"] = Doc,
            ["type"] = "object",
            ["properties"] = properties,
            ["additionalProperties"] = false,
        };
        if (Keys.Any(key => key.IsRequired))
        {
            described["required"] = new JsonArray(
                [.. Keys.Where(key => key.IsRequired).Select(key => (JsonNode)key.Name)]);
        }

        return described;
    }

    private static string Describe(Node node) => node switch
    {
        ScalarNode { Text.Length: 0 } => "nothing",
        ScalarNode scalar => Quote.Text(scalar.Text),
        ListNode => "a list",
        _ => "keys",
    };

    private JsonObject DescribeWithShorthand(SchemaWriter schema) => Shorthand is null
        ? DescribeKeys(schema)
        : new JsonObject { ["anyOf"] = new JsonArray(Shorthand.Describe(schema), DescribeKeys(schema)) };
}
