using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>A GPIO chip of the board, as it was found.</summary>
/// <param name="Path">Its device file, which may differ after the next boot.</param>
/// <param name="Label">The label that its driver gives it.</param>
/// <param name="LineNames">What the kernel calls each of its lines, from offset 0; empty where it has no name for one.</param>
public sealed record ChipSight(string Path, string Label, ImmutableArray<string> LineNames)
{
    /// <summary>Finds a line of it.</summary>
    /// <param name="line">By its name or offset.</param>
    /// <returns>The line, with its offset.</returns>
    /// <exception cref="GpioUnavailableException">It has no such line, or several; the message says what to do.</exception>
    public GpioLine Find(GpioLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (line.Name is not { } name)
        {
            return line.Offset < LineNames.Length ? line : throw NoSuchLine(Label, LineNames.Length, line.Offset);
        }

        var offsets = LineNames.Index().Where(pair => pair.Item == name).Select(pair => pair.Index).ToArray();
        return offsets switch
        {
            [var offset] => line.FoundAt(offset),
            [] => throw new GpioUnavailableException($"Chip '{Label}' has no line named '{name}': {WhatThereIs(name)}"),
            _ => throw new GpioUnavailableException($"Chip '{Label}' has {offsets.Length} lines named '{name}', "
                + $"{string.Join(", ", offsets)}. Write the offset of the one that is meant in the rack file."),
        };
    }

    /// <summary>A chip lacks a line.</summary>
    internal static GpioUnavailableException NoSuchLine(string label, int count, int offset) => new(
        $"Chip '{label}' has lines 0 to {count - 1}, but the rack file asks for line {offset}. Correct the line in the rack file.");

    private string WhatThereIs(string wanted)
    {
        const int Most = 20;
        const string Cure = "Correct the line in the rack file, or write its offset.";
        var names = LineNames.Where(name => name.Length > 0).Distinct().ToArray();
        return names.Length == 0 ? "none of its lines has a name. Write the line's offset in the rack file."
            : NearestName.Of(wanted, names) is { } near ? $"did you mean '{near}'? {Cure}"
            : $"it has {string.Join(", ", names.Take(Most))}{(names.Length > Most ? " and more" : "")}. {Cure}";
    }
}
