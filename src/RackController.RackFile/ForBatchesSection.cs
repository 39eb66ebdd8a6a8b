using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>Puts what batches ask of a rack's schedule into the text of its rack file, and leaves every other character as it is.</summary>
public static class ForBatchesSection
{
    private static readonly RackSection section = new("for-batches", "by the growing book, of what stands on the tiers");

    /// <summary>Puts it in, in the place of what was asked before or at the end of the rack; takes it out where nothing is asked.</summary>
    /// <param name="text">The text of a rack file that is right.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="asked">What is asked.</param>
    /// <returns>The text with it; null where the rack is written in a way in which no line can be put in, such as in braces, or where the
    /// rack cannot do what is asked.</returns>
    public static string? Put(string text, Rack rack, BatchSchedule asked)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(asked);
        return section.Put(text, rack.Id.Index, ForBatchesMapping.Lines(asked)) is { } changed
            && RackFileReader.Parse(changed, "").Site?.Racks[rack.Id.Index].ForBatches.IsLike(asked) == true ? changed : null;
    }

    /// <summary>What the reader would say of a rack file with it.</summary>
    /// <param name="text">The text of a rack file that is right.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="path">The name of the file, which complaints repeat.</param>
    public static ImmutableArray<Complaint> Complaints(string text, Rack rack, BatchSchedule asked, string path)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return section.Put(text, rack.Id.Index, ForBatchesMapping.Lines(asked)) is { } changed
            ? RackFileReader.Parse(changed, path).Complaints
            : [];
    }
}
