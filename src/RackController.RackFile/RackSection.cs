using RackController.RackFile.Binding;

namespace RackController.RackFile;

/// <summary>
/// Puts a section that the program writes into the text of a rack file, and leaves every other character as it is: comments, order, blanks
/// and ends of lines.
/// </summary>
/// <param name="Key">The key of the section in its rack.</param>
/// <param name="Comment">What stands behind the key, to say whose the section is.</param>
internal sealed record RackSection(string Key, string Comment)
{
    private const string Indent = "  ";

    /// <summary>Puts it in, in the place of the section before or at the end of the rack.</summary>
    /// <param name="text">The text of a rack file that is right.</param>
    /// <param name="rack">Place of the rack among the racks of the file.</param>
    /// <param name="content">The lines of the section, without indentation; none to take it out.</param>
    /// <returns>The text with it; null where the rack is written in a way in which no line can be put in, such as in braces. Whoever asks
    /// has to see that the text means what was meant.</returns>
    public string? Put(string text, int rack, IEnumerable<string> content)
    {
        if (YamlText.Read(text, new Complaints("")) is not { } root || RackAt(root, rack) is not { Entries: [var first, ..] } node)
        {
            return null;
        }

        var lines = text.Split('\n').ToList();
        var end = lines[0].EndsWith('\r') ? "\r" : "";
        var indent = new string(' ', first.KeyPlace.Column - 1);
        var old = node.Entries.FirstOrDefault(entry => entry.Key == Key);
        var from = old is not null ? old.KeyPlace.Line - 1 : LastLine(lines, first.KeyPlace) + 1;
        var before = old is null ? indent : lines[from][..(old.KeyPlace.Column - 1)];
        var section = content.Select(line => indent + Indent + line).ToList();
        if (section.Count > 0)
        {
            section.Insert(0, $"{before}{Key}:   # {Comment}");
        }

        section = [.. section.Select(line => line + end)];
        if (old is not null)
        {
            lines.RemoveRange(from, LastLine(lines, old.KeyPlace with { Column = old.KeyPlace.Column + 1 }) + 1 - from);
        }
        else if (section.Count > 0)
        {
            section.Insert(0, end);
            if (from == lines.Count)
            {
                // The last line of the file had no end, and has none then.
                lines[^1] += end;
                section[^1] = section[^1][..^end.Length];
            }
        }

        lines.InsertRange(from, section);
        return string.Join('\n', lines);
    }

    private static MappingNode? RackAt(MappingNode root, int index) =>
        root.Entries.FirstOrDefault(entry => entry.Key == "racks")?.Value is ListNode { Items: var racks } && index < racks.Length
            ? racks[index] as MappingNode
            : null;

    // The last line, from 0, that belongs to what begins at a place: the lines below it that begin no further left.
    private static int LastLine(List<string> lines, Place place)
    {
        var last = place.Line - 1;
        for (var at = place.Line; at < lines.Count; at++)
        {
            var content = lines[at].TrimStart(' ').TrimEnd('\r');
            if (content.Length == 0 || content[0] == '#')
            {
                continue;
            }

            if (lines[at].Length - lines[at].TrimStart(' ').Length < place.Column - 1)
            {
                break;
            }

            last = at;
        }

        return last;
    }
}
