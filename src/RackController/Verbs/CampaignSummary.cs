using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>The screen that a campaign ends with. Colour marks only what is not as it should be, and a word always says the same.</summary>
internal static class CampaignSummary
{
    private const int MostFailures = 20;
    private const int MostBackstops = 8;

    /// <summary>Prints it.</summary>
    /// <param name="findings">What it found.</param>
    /// <param name="reports">Where its reports are.</param>
    /// <param name="wasStopped">Whether somebody ended it by hand.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(CampaignFindings findings, ReportFolder reports, bool wasStopped, IAnsiConsole console)
    {
        console.MarkupLine($"{Markup.Escape(findings.Plan.Site.Name)} {(findings.Passed ? "[bold]held[/]" : "[bold red]DID NOT HOLD[/]")}"
            + (wasStopped ? ", as far as it was tried before it was stopped" : ""));
        Line(console, CampaignWords.Tried(findings));
        Line(console, CampaignWords.Failed(findings));
        console.WriteLine();
        Failures(findings, reports, console);
        Hazards(findings, console);
        Backstops(findings, console);
        Line(console, CampaignWords.FalseTrips(findings.Quiet));
        foreach (var trip in findings.Quiet.Trips)
        {
            Line(console, $"  {trip.Subject}: {trip.Count}");
        }

        console.WriteLine();
        console.WriteLine($"again: {findings.Command}");
        console.WriteLine($"report: {reports.Html}");
    }

    private static void Failures(CampaignFindings findings, ReportFolder reports, IAnsiConsole console)
    {
        foreach (var (group, index) in findings.Failures.Take(MostFailures).Select((group, index) => (group, index)))
        {
            console.MarkupLine($"  [red]{CampaignWords.Word(group.Smallest.Class)}[/] {Markup.Escape(group.Words)} "
                + $"({CampaignWords.Count(group.Count, "case")})");
            Line(console, $"    {group.Smallest.Case.Name}: {group.Smallest.Seen}");
            Line(console, $"    bench {reports.Of(index + 1)}");
        }

        if (findings.Failures.Length > MostFailures)
        {
            Line(console, $"  and {findings.Failures.Length - MostFailures} more, in the report");
        }
    }

    private static void Hazards(CampaignFindings findings, IAnsiConsole console)
    {
        var hazardous = findings.HazardsByMode.Where(mode => mode.HasAny).Take(MostFailures).ToList();
        if (hazardous.Count == 0)
        {
            return;
        }

        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("cases with a hazard");
        foreach (var kind in Enum.GetValues<HazardKind>())
        {
            table.AddColumn(new TableColumn(HazardWords.Title(kind)) { Alignment = Justify.Right });
        }

        foreach (var (mode, _, counts) in hazardous)
        {
            table.AddRow([Markup.Escape(mode.Words), .. counts.Select(count => count == 0 ? "" : $"{count}")]);
        }

        console.Write(table);
    }

    private static void Backstops(CampaignFindings findings, IAnsiConsole console)
    {
        if (findings.Backstops.IsEmpty)
        {
            return;
        }

        Line(console, "Wired parts that had to act, and what only they could catch:");
        foreach (var use in findings.Backstops.OrderByDescending(use => use.Prevented ?? 0).Take(MostBackstops))
        {
            var only = use.Prevented is > 0 ? $", {use.Prevented} of them with nothing else in between: {use.Otherwise}" : "";
            Line(console, $"  {use.Backstop.Words()}: {use.Modes} ({CampaignWords.Count(use.Count, "case")}{only})");
        }

        console.WriteLine();
    }

    private static void Line(IAnsiConsole console, string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }
}
