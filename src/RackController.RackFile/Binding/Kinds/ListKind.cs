using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A list of values of one kind. It is sound when every item is.</summary>
/// <typeparam name="T">What an item is read into.</typeparam>
/// <param name="item">What an item may be.</param>
/// <param name="itemName">What an item is called: a noun without article.</param>
/// <param name="most">How many it may hold; at least one must be there.</param>
public sealed class ListKind<T>(Kind<T> item, string itemName, int most) : Kind<ImmutableArray<T>>
{
    /// <inheritdoc/>
    public override string Expected => $"a list, each item {item.Expected}";

    /// <inheritdoc/>
    public override bool TryRead(
        string name, Node node, Complaints complaints, [MaybeNullWhen(false)] out ImmutableArray<T> value)
    {
        value = [];
        if (node is not ListNode list)
        {
            complaints.Refuse(node.Place, $"`{name}` is no list", $"begin each {itemName} with `- `, or write `[first, second]`");
            return false;
        }

        if (list.Items.Length == 0 || list.Items.Length > most)
        {
            complaints.Refuse(node.Place, $"`{name}` holds {list.Items.Length} items", $"write from 1 to {most}");
            return false;
        }

        var items = ImmutableArray.CreateBuilder<T>(list.Items.Length);
        // What has no keys of its own is found by the key that it stands under.
        var called = item is ScalarKind<T> ? name : itemName;
        foreach (var one in list.Items)
        {
            if (item.TryRead(called, one, complaints, out var read))
            {
                items.Add(read);
            }
        }

        value = items.ToImmutable();
        return value.Length == list.Items.Length;
    }

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "array",
        ["items"] = item.Describe(schema),
        ["minItems"] = 1,
        ["maxItems"] = most,
    };
}
