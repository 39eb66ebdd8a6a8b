using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>A fit as a person reads it on a terminal.</summary>
internal static class TunePage
{
    /// <summary>Prints it.</summary>
    /// <param name="words">The fit.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(TunedWords words, IAnsiConsole console)
    {
        console.WriteLine(words.Head);
        console.WriteLine();
        var rows = words.Times.Insert(0, TunedWords.Columns);
        var widths = TunedWords.Columns.Select((_, column) => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
        {
            console.WriteLine($"  {string.Join("   ", row.Zip(widths, (cell, width) => cell.PadRight(width)))}".TrimEnd());
        }

        console.WriteLine();
        foreach (var line in words.Figures.Select(figure => $"  {figure}").Concat(words.Remarks)
            .SelectMany(text => Wrapping.Lines(text, console.Profile.Width)))
        {
            console.WriteLine(line);
        }

        console.WriteLine();
    }
}
