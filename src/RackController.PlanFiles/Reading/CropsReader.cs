using System.Collections.Immutable;
using RackController.Growing;
using RackController.RackFile;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>Reads a crops file by itself.</summary>
public static class CropsReader
{
    private static readonly CropsMapping mapping = new();

    /// <summary>Reads it.</summary>
    /// <param name="path">Its path.</param>
    /// <returns>The crops, in the order of the file; what cannot be read of it is missing, and complained of.</returns>
    public static (ImmutableArray<Crop> Crops, ImmutableArray<Complaint> Complaints) Read(string path)
    {
        var complaints = new Complaints(path);
        var book = ReadInto(path, complaints);
        return ([.. book.Names.Select(name => book.Find(name)!)], complaints.Sorted());
    }

    /// <summary>Reads it for an orders file.</summary>
    internal static CropBook ReadInto(string path, Complaints complaints)
    {
        var book = new CropBook();
        if (TextFile.Read(path, complaints, out var text) == TextFileOutcome.Read && YamlText.Read(text, complaints) is { } root
            && mapping.TryRead("crops file", root, complaints, out var part))
        {
            book.Add(part.Crops, complaints);
        }

        return book;
    }
}
