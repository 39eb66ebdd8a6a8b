using YamlDotNet.Core;

namespace RackController.RackFile.Binding;

/// <summary>
/// Turns YAML text into nodes that know their place. What a hand-written file does not need and a hostile one abuses
/// (aliases, anchors, tags, several documents, deep nesting) is refused.
/// </summary>
public static class YamlText
{
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

        var builder = new NodeBuilder(new Parser(new StringReader(text)));
        try
        {
            var root = builder.ReadDocument();
            switch (root)
            {
                case null:
                    complaints.Refuse(Place.Start, "the file is empty", "begin with a copy of one from the `config` folder");
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
            complaints.Refuse(NodeBuilder.PlaceOf(broken.Start), $"this is not YAML ({Reason(broken)})", LookHere);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            // The parser ends so, without a place: when a list in brackets runs on over the next key, and at a tag that is no address.
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
}
