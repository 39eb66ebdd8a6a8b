using System.Collections.Immutable;

namespace RackController.RackFile.Binding;

/// <summary>Gathers everything that is wrong in one file, so that a person sees it all at once.</summary>
/// <param name="fileName">The file as the person named it.</param>
public sealed class Complaints(string fileName)
{
    /// <summary>More than a person reads at once; a file with as many is not what was meant.</summary>
    private const int MostShown = 100;

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

    /// <summary>Everything said, in the order of the file; beyond a hundred only how many more there are.</summary>
    public ImmutableArray<Complaint> Sorted()
    {
        var sorted = all
            .OrderBy(one => one.Line)
            .ThenBy(one => one.Column)
            .ThenBy(one => one.What, StringComparer.Ordinal)
            .ToImmutableArray();
        return sorted.Length <= MostShown
            ? sorted
            : [.. sorted[..MostShown], sorted[MostShown] with
            {
                What = $"this and {sorted.Length - MostShown - 1} more complaints",
                WhatToDo = "mend those above first",
                Severity = HasErrors ? Severity.Error : Severity.Warning,
            }];
    }
}
