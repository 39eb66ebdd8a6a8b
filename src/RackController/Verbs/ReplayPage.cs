using System.Globalization;
using NodaTime;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.Service;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What a replay came to, for a person.</summary>
/// <param name="journal">Where the words of then are.</param>
/// <param name="console">Where to print.</param>
internal sealed class ReplayPage(JournalRecord journal, IAnsiConsole console)
{
    private const int MostShown = 10;

    private long runs;
    private long commands;
    private long events;
    private long differences;
    private long bytes;
    private Duration length;

    /// <summary>Prints what one run came to.</summary>
    /// <param name="site">Its site.</param>
    /// <param name="run">The run.</param>
    /// <param name="replayed">What came of it.</param>
    public void Print(Site site, RecordedRun run, ReplayedRun replayed)
    {
        var span = replayed is { From: { } from, Until: { } until } ? until.Monotonic - from.Monotonic : Duration.Zero;
        runs++;
        commands += replayed.Commands;
        events += replayed.Events;
        differences += replayed.DifferenceCount;
        bytes += run.Bytes;
        length += span;

        console.WriteLine(replayed.From is { } begin
            ? Text($"Run {run.Number} of {site.Name}, from {LogText.LocalTime(site, begin.Wall)} for {Spans.Words(span)}")
            : Text($"Run {run.Number} of {site.Name}"));
        console.WriteLine(Text(
            $"  {replayed.Scans} scans that could matter; {replayed.Commands} commands and {replayed.Events} events held against them"));
        foreach (var gap in replayed.Gaps)
        {
            console.WriteLine(Text($"  not on record: {gap}"));
        }

        if (replayed.Settling > Duration.Zero)
        {
            console.WriteLine(Text(
                $"  {Spans.Words(replayed.Settling)} of it begins from what was remembered, and is not held against anything"));
        }

        if (replayed.OtherWords > 0)
        {
            console.WriteLine(Text($"  {replayed.OtherWords} times the same happened for a reason in other words"));
        }

        foreach (var difference in replayed.Differences.Take(MostShown))
        {
            Print(site, difference);
        }

        if (replayed.DifferenceCount > MostShown)
        {
            console.WriteLine(Text($"  and {replayed.DifferenceCount - MostShown} differences more"));
        }
    }

    /// <summary>Prints what all of it came to.</summary>
    public void PrintTotals()
    {
        // Less than an hour says nothing about a day: the state that a record begins with would count a thousand times.
        var days = length / Duration.FromDays(1);
        var perDay = length >= Duration.FromHours(1) ? Text($", {bytes / days / 1e6:0.00} MB a day") : "";
        console.WriteLine(Text($"The record takes {bytes / 1e6:0.0} MB{perDay}."));
        console.MarkupLine(differences == 0
            ? Text($"[bold]Same[/]: {commands} commands and {events} events of {runs} {(runs == 1 ? "run" : "runs")} came out again.")
            : Text($"[bold red]DIFFERENT[/]: {differences} times something else came out."));
    }

    private void Print(Site site, ReplayDifference difference)
    {
        var then = journal.Because(difference.At, difference.Subject) is { } because ? $", because {because}" : "";
        console.MarkupLineInterpolated($"  [red]{LogText.LocalTime(site, difference.At.Wall)}[/] {difference.Subject}");
        Indented($"on record: {difference.Recorded}{then}");
        Indented($"replayed:  {difference.Replayed}");
        foreach (var step in difference.Why)
        {
            Indented($"  {step}");
        }
    }

    private void Indented(string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width - 4))
        {
            console.WriteLine($"    {line}");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
