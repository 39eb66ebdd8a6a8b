using System.Collections.Immutable;

namespace RackController.RackFile.Binding;

/// <summary>A piece of YAML with its place: a scalar, a list or a mapping. There are no aliases, anchors or tags.</summary>
/// <param name="Place">Where it begins.</param>
public abstract record Node(Place Place);

/// <summary>One value, always as the text that was written: <c>06:00</c>, <c>no</c> and <c>010</c> mean what they look
/// like.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Text">The text, without quotes.</param>
/// <param name="IsQuoted">Whether it stood in quotes or in a block.</param>
public sealed record ScalarNode(Place Place, string Text, bool IsQuoted) : Node(Place);

/// <summary>A list.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Items">Its items, in order.</param>
public sealed record ListNode(Place Place, ImmutableArray<Node> Items) : Node(Place);

/// <summary>Keys and values, in the order of the file. A key may still stand here twice.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Entries">Its entries.</param>
public sealed record MappingNode(Place Place, ImmutableArray<Entry> Entries) : Node(Place)
{
    /// <summary>Whether a key stands in it.</summary>
    /// <param name="key">The key.</param>
    public bool Has(string key) => Entries.Any(entry => entry.Key == key);
}

/// <summary>One key with its value.</summary>
/// <param name="KeyPlace">Where the key stands.</param>
/// <param name="Key">The key.</param>
/// <param name="Value">Its value.</param>
public sealed record Entry(Place KeyPlace, string Key, Node Value);
