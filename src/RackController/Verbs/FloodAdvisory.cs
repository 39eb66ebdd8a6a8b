using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What a flood of a rack does on every tier by the simulated rack, what is wrong with it, and what to change.</summary>
internal static class FloodAdvisory
{
    private const string BetweenColumns = "   ";

    /// <summary>Prints the tiers, then what is wrong.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(FloodAdvice advice, IAnsiConsole console)
    {
        string[][] rows = [[.. FloodWording.Columns], .. FloodWording.Rows(advice.Survey)];
        var widths = FloodWording.Columns.Select((_, column) => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
        {
            var cells = row.Zip(widths, (cell, width) => cell.PadRight(width));
            console.WriteLine($"    {string.Join(BetweenColumns, cells)}".TrimEnd());
        }

        foreach (var line in PumpWording.Lines(advice.Survey).SelectMany(text => Wrapping.Lines($"    {text}", console.Profile.Width)))
        {
            console.WriteLine(line);
        }

        PrintWrong(advice, console);
    }

    /// <summary>Prints what is wrong and what to change; nothing when nothing is.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="console">Where to print.</param>
    public static void PrintWrong(FloodAdvice advice, IAnsiConsole console)
    {
        foreach (var (text, items) in FloodWording.Wrong(advice))
        {
            foreach (var line in items.Select(item => $"    - {item}").Prepend($"  {text}")
                .SelectMany(line => Wrapping.Lines(line, console.Profile.Width)))
            {
                console.WriteLine(line);
            }
        }
    }
}
