using System.Collections.Immutable;
using RackController.Growing;
using RackController.RackFile;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>What reading a crops file came to.</summary>
/// <param name="Crops">The crops, in the order of the file; what cannot be read of it is missing, and complained of.</param>
/// <param name="Complaints">Everything that is wrong with it.</param>
/// <param name="CouldBeRead">Whether there was a file to judge at all.</param>
public sealed record CropsReading(ImmutableArray<Crop> Crops, ImmutableArray<Complaint> Complaints, bool CouldBeRead = true)
{
    /// <summary>Whether all of it can be used.</summary>
    public bool IsRight => Complaints.All(complaint => complaint.Severity == Severity.Warning);
}

/// <summary>Reads a crops file by itself: a list <c>crops</c>, each with what it needs and gives. Whatever a person may have written, the
/// answer is complaints and never an exception.</summary>
public static class CropsReader
{
    /// <summary>The file as a whole.</summary>
    internal static CropsMapping Mapping { get; } = new();

    /// <summary>Reads it.</summary>
    /// <param name="path">Its path, which complaints repeat.</param>
    public static CropsReading Read(string path)
    {
        var complaints = new Complaints(path);
        var book = ReadInto(path, complaints, out var outcome);
        return new CropsReading(
            [.. book.Names.Select(name => book.Find(name)!)], complaints.Sorted(), CouldBeRead: outcome != TextFileOutcome.Unreadable);
    }

    /// <summary>Reads it for an orders file.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="complaints">Where to say what is wrong.</param>
    /// <param name="outcome">Whether there was a file to read.</param>
    internal static CropBook ReadInto(string path, Complaints complaints, out TextFileOutcome outcome)
    {
        var book = new CropBook();
        outcome = TextFile.Read(path, complaints, out var text);
        if (outcome != TextFileOutcome.Read || YamlText.Read(text, complaints) is not { } root)
        {
            return book;
        }

        if (FileRecognition.KindOf(root) is not (PlainFile.Crops or null))
        {
            complaints.Refuse(root.Place, "this is no crops file", "name one that lists what crops need, such as crops.yaml");
        }
        else if (Mapping.TryRead("crops file", root, complaints, out var part))
        {
            book.Add(part.Crops, complaints);
        }

        return book;
    }
}
