using RackController.Bench;
using RackController.Control;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What a site cannot see or do for want of sensors, contactors and wired parts, and what one more would change.</summary>
internal static class MissingPartsPage
{
    /// <summary>Prints it; nothing where nothing is missing.</summary>
    /// <param name="site">The site.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(Site site, IAnsiConsole console)
    {
        PrintRows(site, console);
        var gains = PartGains.Of(site);
        if (gains.Gains.IsEmpty)
        {
            return;
        }

        console.WriteLine();
        Wrapped(
            $"What one more part would buy. Each of {gains.Tried} single failures was tried once, in mid-fill. Harm done, or kept off by "
            + $"the pump's own wire alone: {gains.Hazards}. A crop short without a word: {gains.Unnoticed}.", console);
        foreach (var gain in gains.Gains)
        {
            Wrapped($"  {gain.Part.What}: {gain.Part.Buys}{Brings(gain)}{Cuts(gain, gains)}", console);
        }
    }

    private static void PrintRows(Site site, IAnsiConsole console)
    {
        var lacking = CauseAndEffectTable.At(site).Where(row => !row.Lacking.IsEmpty).ToList();
        if (lacking.Count == 0)
        {
            return;
        }

        console.WriteLine();
        console.WriteLine("Rows of the table that lack what they need (`cause-and-effect` says what):");
        foreach (var place in lacking.SelectMany(row => row.Lacking).Distinct())
        {
            var rows = lacking.Where(row => row.Lacking.Contains(place)).Select(row => row.Row.Id);
            Wrapped($"  {place}: {string.Join(", ", rows)}", console);
        }
    }

    private static string Brings(PartGain gain) => gain.Rows.IsEmpty ? "" : $"; brings {string.Join(", ", gain.Rows)}";

    private static string Cuts(PartGain gain, PartGains of)
    {
        var harm = gain.Cuts > 0 ? $"; harm {of.Hazards - gain.Cuts} instead of {of.Hazards}" : "";
        return gain.TellsOf > 0 ? $"{harm}; short {of.Unnoticed - gain.TellsOf} instead of {of.Unnoticed}" : harm;
    }

    private static void Wrapped(string text, IAnsiConsole console)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }
}
