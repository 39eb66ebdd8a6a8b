using System.Collections.Immutable;

namespace RackController.RackFile.Binding;

/// <summary>Gathers everything that is wrong in one file, so that a person sees it all at once.</summary>
/// <param name="fileName">The file as the person named it.</param>
public sealed class Complaints(string fileName)
{
    private readonly HashSet<Complaint> all = [];

    /// <summary>Whether anything said so far keeps the file from being run.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>Says that something cannot be.</summary>
    /// <param name="place">Where.</param>
    /// <param name="what">What is wrong.</param>
    /// <param name="whatToDo">What to do about it.</param>
    public void Refuse(Place place, string what, string whatToDo)
    {
        all.Add(new Complaint(fileName, place.Line, place.Column, what, whatToDo));
        HasErrors = true;
    }

    /// <summary>Says that something can be, and is unwise.</summary>
    /// <param name="place">Where.</param>
    /// <param name="what">What is unwise.</param>
    /// <param name="whatToDo">What would be better.</param>
    public void Warn(Place place, string what, string whatToDo) =>
        all.Add(new Complaint(fileName, place.Line, place.Column, what, whatToDo, Severity.Warning));

    /// <summary>Everything said, in the order of the file.</summary>
    public ImmutableArray<Complaint> Sorted() =>
        [.. all.OrderBy(one => one.Line).ThenBy(one => one.Column).ThenBy(one => one.What, StringComparer.Ordinal)];
}
