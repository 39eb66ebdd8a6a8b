using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace RackController.RackFile.Binding;

/// <summary>Builds nodes of the events of the YAML parser, and stops at what nobody needs.</summary>
/// <param name="parser">The parser, at the start of its text.</param>
internal sealed class NodeBuilder(Parser parser)
{
    private const int DeepestNesting = 16;
    private const int MostNodes = 50_000;

    private int nodes;

    /// <summary>The last place that could be read.</summary>
    public Place Reached { get; private set; } = Place.Start;

    /// <summary>Where a mark of the parser stands.</summary>
    public static Place PlaceOf(Mark mark) => new((int)Math.Max(1, mark.Line), (int)Math.Max(1, mark.Column));

    /// <summary>Reads the only document.</summary>
    /// <returns>Its node; null when it is empty.</returns>
    /// <exception cref="RefusedYamlException">It is right and not wanted.</exception>
    /// <exception cref="YamlException">It is not YAML.</exception>
    public Node? ReadDocument()
    {
        parser.Consume<StreamStart>();
        if (parser.Accept<StreamEnd>(out _))
        {
            return null;
        }

        parser.Consume<DocumentStart>();
        var isEmpty = parser.Accept<Scalar>(out var scalar) && scalar.Value.Length == 0 && scalar.Style == ScalarStyle.Plain;
        var root = ReadNode(0);
        parser.Consume<DocumentEnd>();
        if (parser.Accept<DocumentStart>(out var second))
        {
            throw new RefusedYamlException(
                PlaceOf(second.Start), "a second document begins here", "keep one document in a file; remove the line `---`");
        }

        return isEmpty ? null : root;
    }

    private Node ReadNode(int depth)
    {
        if (parser.Accept<AnchorAlias>(out var alias))
        {
            throw AnchorOrAlias(PlaceOf(alias.Start));
        }

        if (!parser.Accept<NodeEvent>(out var next))
        {
            throw new YamlException(parser.Current!.Start, parser.Current.End, "a value is missing");
        }

        var place = PlaceOf(next.Start);
        Reached = place;
        RefuseWhatNobodyNeeds(next, place, depth);
        switch (next)
        {
            case Scalar scalar:
                parser.MoveNext();
                return new ScalarNode(place, scalar.Value, scalar.Style != ScalarStyle.Plain);
            case SequenceStart:
                return ReadList(place, depth);
            default:
                return ReadMapping(place, depth);
        }
    }

    private void RefuseWhatNobodyNeeds(NodeEvent next, Place place, int depth)
    {
        if (!next.Anchor.IsEmpty)
        {
            throw AnchorOrAlias(place);
        }

        if (!next.Tag.IsEmpty && !next.Tag.IsNonSpecific)
        {
            throw new RefusedYamlException(place, "a tag (`!name`)", "remove it; text that begins with ! needs quotes");
        }

        if (depth > DeepestNesting)
        {
            throw new RefusedYamlException(
                place, $"nested more than {DeepestNesting} deep", "nothing here needs that; look for stray brackets");
        }

        if (++nodes > MostNodes)
        {
            throw new RefusedYamlException(place, $"more than {MostNodes} values", "split the site into several files");
        }
    }

    private static RefusedYamlException AnchorOrAlias(Place place) => new(
        place, "an anchor or alias (`&name`, `*name`)", "write the value out; text that begins with & or * needs quotes");

    private ListNode ReadList(Place place, int depth)
    {
        parser.Consume<SequenceStart>();
        var items = ImmutableArray.CreateBuilder<Node>();
        while (!parser.TryConsume<SequenceEnd>(out _))
        {
            items.Add(ReadNode(depth + 1));
        }

        return new ListNode(place, items.ToImmutable());
    }

    private MappingNode ReadMapping(Place place, int depth)
    {
        parser.Consume<MappingStart>();
        var entries = ImmutableArray.CreateBuilder<Entry>();
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var key = ReadNode(depth + 1);
            if (key is not ScalarNode scalar)
            {
                throw new RefusedYamlException(key.Place, "a key that is not a word", "write `key: value`");
            }

            entries.Add(new Entry(scalar.Place, scalar.Text, ReadNode(depth + 1)));
        }

        return new MappingNode(place, entries.ToImmutable());
    }
}

/// <summary>YAML that is right and that no hand-written file needs.</summary>
/// <param name="place">Where.</param>
/// <param name="what">What it is.</param>
/// <param name="whatToDo">What to write instead.</param>
internal sealed class RefusedYamlException(Place place, string what, string whatToDo) : Exception(what)
{
    public Place Place { get; } = place;

    public string WhatToDo { get; } = whatToDo;
}
