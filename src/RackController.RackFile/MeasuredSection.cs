using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>Puts what was measured of a rack into the text of its rack file, and leaves every other character as it is.</summary>
public static class MeasuredSection
{
    private static readonly RackSection section = new("measured", "by `tune`, of timed floods; the bench follows it, no interlock does");

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
        return section.Put(text, rack.Id.Index, MeasuredMapping.Lines(measured)) is { } changed
            && IsAsMeant(changed, rack.Id.Index, measured) ? changed : null;
    }

    /// <summary>What is wrong, and what to do, where it cannot be put in.</summary>
    /// <param name="rack">The rack.</param>
    public static string NoRoomIn(Rack rack)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return $"{rack.Name} is written in a way in which no line can be put in: give each of its keys a line of its own";
    }

    // Whoever writes lists, braces and long texts in ways of their own is found out here, instead of finding it out at the next start.
    private static bool IsAsMeant(string text, int index, MeasuredRack measured) =>
        RackFileReader.Parse(text, "").Site?.Racks[index].Measured is { } read
        && MeasuredMapping.Lines(read).SequenceEqual(MeasuredMapping.Lines(measured));
}
