using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace RackController.RackFile.Binding;

/// <summary>
/// Turns YAML text into nodes that know their place. What a hand-written file does not need and a hostile one abuses
/// (aliases, anchors, tags, several documents, deep nesting) is refused.
/// </summary>
public static class YamlText
{
    private const int DeepestNesting = 16;
    private const int MostNodes = 50_000;

    private const string LookHere =
        "look here and one line up for a missing space after a colon, a lost quote or bracket, or a wrong indentation";

    /// <summary>Reads one document.</summary>
    /// <param name="text">The text.</param>
    /// <param name="complaints">Where to say what is wrong.</param>
    /// <returns>The document's mapping, or null after a complaint.</returns>
    public static MappingNode? Read(string text, Complaints complaints)
    {
        if (TabInIndentation(text) is { } tab)
        {
            complaints.Refuse(tab, "a tab in the indentation", "YAML indents with spaces; replace it with two of them");
            return null;
        }

        var builder = new Builder(new Parser(new StringReader(text)));
        try
        {
            var root = builder.ReadDocument();
            switch (root)
            {
                case null:
                    complaints.Refuse(Place.Start, "the file is empty", "write at least the keys that are required");
                    return null;
                case MappingNode mapping:
                    return mapping;
                default:
                    complaints.Refuse(root.Place, "the file holds no keys", "write lines such as `zone: Europe/London`");
                    return null;
            }
        }
        catch (RefusedYamlException refused)
        {
            complaints.Refuse(refused.Place, refused.Message, refused.WhatToDo);
        }
        catch (YamlException broken)
        {
            complaints.Refuse(Builder.PlaceOf(broken.Start), $"this is not YAML ({Reason(broken)})", LookHere);
        }
        catch (InvalidOperationException)
        {
            // The parser ends so, without a place, when a list in brackets runs on over the next key.
            complaints.Refuse(builder.Reached, "this is not YAML from here on", LookHere);
        }

        return null;
    }

    private static string Reason(YamlException broken)
    {
        var text = broken.Message.ReplaceLineEndings(" ").Replace(": ", ", ", StringComparison.Ordinal).TrimEnd('.');
        return text.Length == 0 ? "unreadable" : char.ToLowerInvariant(text[0]) + text[1..];
    }

    private static Place? TabInIndentation(string text)
    {
        var line = 1;
        foreach (var range in text.AsSpan().EnumerateLines())
        {
            var content = range.TrimStart(" \t");
            var tab = range[..^content.Length].IndexOf('\t');
            if (tab >= 0 && content.Length > 0 && content[0] != '#')
            {
                return new Place(line, tab + 1);
            }

            line++;
        }

        return null;
    }

    private sealed class RefusedYamlException(Place place, string what, string whatToDo) : Exception(what)
    {
        public Place Place { get; } = place;

        public string WhatToDo { get; } = whatToDo;
    }

    private sealed class Builder(Parser parser)
    {
        private int nodes;

        /// <summary>The last place that could be read.</summary>
        public Place Reached { get; private set; } = Place.Start;

        public static Place PlaceOf(Mark mark) => new((int)Math.Max(1, mark.Line), (int)Math.Max(1, mark.Column));

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
}
