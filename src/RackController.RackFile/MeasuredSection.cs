using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>
/// Puts what was measured of a rack into the text of its rack file, and leaves every other character as it is: comments, order, blanks
/// and ends of lines.
/// </summary>
public static class MeasuredSection
{
    private const string Key = "measured";
    private const string Comment = "   # by `tune`, of timed floods; the bench follows it, no interlock does";
    private const string Indent = "  ";

    /// <summary>Puts it in, in the place of what was measured before or at the end of the rack.</summary>
    /// <param name="text">The text of a rack file that is right.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="measured">What was measured.</param>
    /// <returns>The text with it; null where the rack is written in a way in which no line can be put in, such as in braces.</returns>
    public static string? Put(string text, Rack rack, MeasuredRack measured)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(measured);
        if (YamlText.Read(text, new Complaints("")) is not { } root || RackAt(root, rack.Id.Index) is not { Entries: [var first, ..] } node)
        {
            return null;
        }

        var lines = text.Split('\n').ToList();
        var end = lines[0].EndsWith('\r') ? "\r" : "";
        var indent = new string(' ', first.KeyPlace.Column - 1);
        var old = node.Entries.FirstOrDefault(entry => entry.Key == Key);
        var from = old is not null ? old.KeyPlace.Line - 1 : LastLine(lines, first.KeyPlace) + 1;
        var before = old is null ? indent : lines[from][..(old.KeyPlace.Column - 1)];
        var section = MeasuredMapping.Lines(measured).Select(line => indent + Indent + line).Prepend($"{before}{Key}:{Comment}")
            .Select(line => line + end).ToList();
        if (old is not null)
        {
            lines.RemoveRange(from, LastLine(lines, old.KeyPlace with { Column = old.KeyPlace.Column + 1 }) + 1 - from);
        }
        else
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
        var changed = string.Join('\n', lines);
        return IsAsMeant(changed, rack.Id.Index, measured) ? changed : null;
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

    // Whoever writes lists, braces and long texts in ways of their own is found out here, instead of finding it out at the next start.
    private static bool IsAsMeant(string text, int index, MeasuredRack measured) =>
        RackFileReader.Parse(text, "").Site?.Racks[index].Measured is { } read
        && MeasuredMapping.Lines(read).SequenceEqual(MeasuredMapping.Lines(measured));
}
