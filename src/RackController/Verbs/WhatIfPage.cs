using System.Globalization;
using NodaTime;
using RackController.Bench;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What another rack file would have made of a journal, for a person, with what that cannot tell.</summary>
internal static class WhatIfPage
{
    private const int MostShown = 10;

    private const string Limits =
        "What this cannot know: sensors say what they said then. A flood that only this file would have run moves no water here, "
        + "and one that it would have left out is still felt; read it as what would have been decided, not as what would have happened. "
        + "Measured values are on record once a minute, whenever something happened, and where they passed a limit of then: a new limit "
        + "is seen to be passed up to a minute late.";

    /// <summary>Prints it.</summary>
    /// <param name="file">The other file.</param>
    /// <param name="site">Its site.</param>
    /// <param name="result">What it would have made.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(string file, Site site, WhatIfResult result, IAnsiConsole console)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]With {file}[/], over {Spans.Words(result.Told)} on record");
        Loads(result, console);
        Counts("trips", result.Trips, console);
        Counts("alarms", result.Alarms, console);
        foreach (var sensor in result.Unknown)
        {
            Indented(console, 2, $"{sensor} is not on record: a contact is taken as harmless, a measured value stays unknown");
        }

        foreach (var difference in result.Differences.Take(MostShown))
        {
            console.WriteLine($"  {LogText.LocalTime(site, difference.At.Wall)} {difference.Subject}: "
                + $"{difference.Recorded} then, {difference.Replayed} with it");
            foreach (var step in difference.Why)
            {
                Indented(console, 6, step);
            }
        }

        if (result.DifferenceCount > MostShown)
        {
            console.WriteLine($"  and {result.DifferenceCount - MostShown} times more");
        }

        console.WriteLine();
        Indented(console, 0, Limits);
    }

    private static void Loads(WhatIfResult result, IAnsiConsole console)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("load", "on then", "on with it", "only then", "only with it");
        foreach (var load in result.Loads.Where(load => load.Then is null || load.OnlyThen + load.OnlyWith > Duration.Zero))
        {
            table.AddRow(
                new Text(load.Name), new Text(load.Then is { } then ? Words(then) : "not there"), new Text(Words(load.With)),
                new Text(load.Then is null ? "" : Words(load.OnlyThen)), new Text(load.Then is null ? "" : Words(load.OnlyWith)));
        }

        var same = result.Loads.Length - table.Rows.Count;
        if (table.Rows.Count > 0)
        {
            console.Write(table);
        }

        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"  {same} of {result.Loads.Length} loads would have been on and off as they were"));
    }

    private static void Counts(string noun, IReadOnlyList<WhatIfCount> counts, IAnsiConsole console)
    {
        console.WriteLine(counts.Count == 0
            ? $"  {noun}: the same"
            : $"  {noun}: {string.Join(", ", counts.Select(count => $"{count.Subject} {count.With} instead of {count.Then}"))}");
    }

    private static string Words(Duration length) => length == Duration.Zero ? "-" : Spans.Words(length);

    private static void Indented(IAnsiConsole console, int indent, string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width - indent))
        {
            console.WriteLine(new string(' ', indent) + line);
        }
    }
}
