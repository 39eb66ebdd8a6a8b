using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>The one screen that a bench run ends with. Colour marks only what is not as it should be, and a word always
/// says the same.</summary>
internal static class BenchSummary
{
    private const int Indent = 11;

    /// <summary>Prints it.</summary>
    /// <param name="result">The run.</param>
    /// <param name="wall">How long the run took.</param>
    /// <param name="reports">Where its reports are.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(RunResult result, TimeSpan wall, ReportFolder reports, IAnsiConsole console)
    {
        var scenario = result.Scenario;
        var verdict = result.Passed ? "[bold]held[/]" : "[bold red]DID NOT HOLD[/]";
        console.MarkupLine($"{Markup.Escape(scenario.Name)} {verdict}");
        foreach (var line in Wrapping.Lines(scenario.About, console.Profile.Width))
        {
            console.WriteLine(line);
        }

        console.WriteLine();
        console.MarkupLineInterpolated(
            $"{scenario.Site.Name}, from {LogText.LocalMinute(scenario.Site, scenario.Start)} for {Spans.Words(scenario.Length)}");
        console.WriteLine();
        Expectations(result, console);
        Hazards(result, console);
        Tiers(result, console);
        Totals(result, console);
        Advice(result, console);
        var ratio = scenario.Length.TotalSeconds / wall.TotalSeconds;
        console.WriteLine($"{result.Scans} scans in {wall.TotalSeconds:0.00} s, {ratio:0} times as fast as time passes");
        console.WriteLine($"event log: {LogText.Fingerprint(result)}");
        console.WriteLine($"report: {reports.Html}");
    }

    private static void Expectations(RunResult result, IAnsiConsole console)
    {
        foreach (var verdict in result.Verdicts)
        {
            console.MarkupLine(
                $"  {(verdict.IsMet ? "met    " : "[red]NOT MET[/]")}  {Markup.Escape(verdict.Expectation.Name)}");
            if (verdict.Failure is { } failure)
            {
                Failure(result.Scenario, verdict, failure, console);
            }
        }
    }

    private static void Failure(Scenario scenario, Verdict verdict, Failure failure, IAnsiConsole console)
    {
        Indented(console, $"expected {verdict.Words} ({scenario.File}:{verdict.Expectation.Line})");
        Indented(console, $"at {LogText.LocalTime(scenario.Site, failure.At)}: {failure.Seen}");
        Causes(scenario, failure.Causes, console);
    }

    private static void Causes(Scenario scenario, IReadOnlyList<LogEntry> causes, IAnsiConsole console)
    {
        if (causes.Count > 0)
        {
            Indented(console, "what led there:");
        }

        foreach (var cause in causes)
        {
            Indented(
                console,
                $"  {LogText.LocalTime(scenario.Site, cause.At)} {cause.Subject}: {cause.What}, because {cause.Because}");
        }
    }

    private static void Hazards(RunResult result, IAnsiConsole console)
    {
        if (result.Hazards.IsEmpty)
        {
            console.WriteLine("  no hazard showed");
        }

        foreach (var hazard in result.Hazards)
        {
            var acceptance = result.Acceptance(hazard);
            console.MarkupLine($"  {(acceptance is null ? "[red]HAZARD [/]" : "[yellow]accepted[/]")} {Markup.Escape(hazard.Seen)}");
            Indented(console, $"at {LogText.LocalTime(result.Scenario.Site, hazard.At)}");
            if (acceptance is not null)
            {
                Indented(console, $"stopped by what is wired: {acceptance.Backstop}");
            }
            else
            {
                Causes(result.Scenario, hazard.Causes, console);
            }
        }

        console.WriteLine();
    }

    private static void Tiers(RunResult result, IAnsiConsole console)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (var heading in (string[])["tier", "floods", "fill", "drain", "depth", "light", "DLI"])
        {
            table.AddColumn(new TableColumn(heading) { NoWrap = true, Padding = new Padding(0, 0, 2, 0) });
        }

        foreach (var rack in result.Scenario.Site.Racks)
        {
            var floods = result.FloodTotals[rack.Id.Index];
            foreach (var light in result.Racks[rack.Id.Index].TierLights.Reverse())
            {
                var tray = floods.Trays[light.TierNumber - 1];
                table.AddRow(
                    Markup.Escape($"{rack.Name}/tier {light.TierNumber}"),
                    $"{floods.Count}",
                    Range(tray.FilledMin, "0.0", "min"),
                    Range(tray.DrainedMin, "0.0", "min"),
                    Range(tray.PeakMm, "0", "mm"),
                    light.HoursPerDay is { } hours ? $"{hours:0.0} h" : "-",
                    light.DailyMolPerM2 is { } dli ? $"{dli:0.0}" : "-");
            }
        }

        console.Write(table);
    }

    private static string Range(Extent extent, string format, string unit)
    {
        if (extent.Range is not { } range)
        {
            return "-";
        }

        var (least, most) = (range.Least.ToString(format), range.Most.ToString(format));
        return least == most ? $"{least} {unit}" : $"{least} to {most} {unit}";
    }

    private static void Totals(RunResult result, IAnsiConsole console)
    {
        foreach (var rack in result.Racks)
        {
            console.WriteLine($"  {TotalsWords.Of(result, rack)}");
            console.WriteLine($"  {TotalsWords.Reservoir(result, rack)}");
        }

        foreach (var energy in TotalsWords.Energy(result))
        {
            console.WriteLine($"  {energy}");
        }

        console.MarkupLineInterpolated($"  interlock trips: {TotalsWords.Listed(result.Trips)}");
        console.MarkupLineInterpolated($"  alarms raised: {TotalsWords.Listed(result.Alarms)}");
        console.WriteLine();
    }

    private static void Advice(RunResult result, IAnsiConsole console)
    {
        foreach (var advice in result.FloodAdvice.Where(advice => !advice.Survey.Findings.IsEmpty))
        {
            console.MarkupLineInterpolated($"  A flood of {advice.Survey.Rack.Name} does not do what it should:");
            FloodAdvisory.PrintWrong(advice, console);
            console.WriteLine();
        }
    }

    private static void Indented(IAnsiConsole console, string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width - Indent))
        {
            console.WriteLine(new string(' ', Indent) + line);
        }
    }
}
