using System.CommandLine;
using NodaTime;
using NodaTime.Text;
using RackController.Bench;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>day FILE --date DATE</c>: what every load will do on a local day, and when.</summary>
internal static class DayVerb
{
    private const char Tie = '\u00A0';

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, such as config/demo-four-tier.yaml.");
        var date = new Option<LocalDate>("--date")
        {
            Description = "The local date, such as 2026-03-29.",
            HelpName = "date",
            Required = true,
            CustomParser = result => Parsing.Local(
                LocalDatePattern.Iso, date => date, result, "--date takes a date such as 2026-03-29"),
        };
        var verb = new Command("day", "Print what every load will do on a day, in local time.") { file, date };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.GetValue(date), parsed.InvocationConfiguration));
        return verb;
    }

    private static int Run(FileInfo file, LocalDate date, InvocationConfiguration console)
    {
        if (RackFileArgument.Read(file.ToString(), console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        Print(DayPlan.Of(site, date), Screen.Over(console.Output));
        return ExitCode.AsExpected;
    }

    private static void Print(DayPlan plan, IAnsiConsole console)
    {
        var (day, site) = (plan.Day, plan.Day.Site);
        console.WriteLine($"{site.Name}, {day.Words} ({site.Zone.Id})");
        if (day.ChangeInWords is { } change)
        {
            console.WriteLine(change);
        }

        console.WriteLine();
        var names = site.Loads.Max(load => load.Name.Length) + 2;
        foreach (var load in plan.Loads)
        {
            var lines = Wrapping.Lines(Words(plan, load), console.Profile.Width - names)
                .Select(line => line.Replace(Tie, ' ')).ToList();
            console.WriteLine(site[load.Load].Name.PadRight(names) + lines[0]);
            foreach (var line in lines.Skip(1))
            {
                console.WriteLine(new string(' ', names) + line);
            }
        }

        if (site.Racks.Any(rack => rack.Schedule.Runs.Any(run => run is RunByReading)))
        {
            console.WriteLine();
            console.WriteLine("Loads that follow a reading are shown as they would run in a temperate room.");
        }
    }

    private static string Words(DayPlan plan, LoadDay load)
    {
        var day = plan.Day;
        if (load.On.IsEmpty)
        {
            return "off all day";
        }

        if (load.Total == day.End - day.Start)
        {
            return "on all day";
        }

        var stretches = load.On.Select(stretch => Stretch(day, stretch)).ToList();
        return $"on {string.Join(", ", stretches.Select(Whole))} {Whole($"({Spans.Words(load.Total)})")}";
    }

    // A time from here to there, or a sum, is read more easily when it is not broken at the end of a line.
    private static string Whole(string words) => words.Replace(' ', Tie);

    private static string Stretch(LocalDay day, Interval stretch)
    {
        var from = day.Clock(stretch.Start);
        var until = stretch.End == day.End ? "midnight" : day.Clock(stretch.End);
        var zone = from.IndexOf(' ', StringComparison.Ordinal);
        return zone > 0 && until.EndsWith(from[zone..], StringComparison.Ordinal)
            ? $"{from[..zone]} to {until}"
            : $"{from} to {until}";
    }
}
