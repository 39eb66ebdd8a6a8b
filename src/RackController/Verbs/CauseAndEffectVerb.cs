using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>cause-and-effect FILE</c>: what each cause does to the loads of a rack, and which causes it cannot see.</summary>
internal static class CauseAndEffectVerb
{
    private static readonly string[] forms = ["table", "markdown", "html"];

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, such as config/demo-four-tier.yaml.");
        var form = new Option<string>("--as")
        {
            Description = "How to write it: a table for the terminal, or a document.",
            HelpName = "form",
            DefaultValueFactory = _ => "table",
            CustomParser = FormOf,
        };
        form.CompletionSources.Add([.. forms]);
        var verb = new Command("cause-and-effect", "Print what each cause does to each load of a rack, and what it cannot see.")
        {
            file, form,
        };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.GetRequiredValue(form), parsed.InvocationConfiguration));
        return verb;
    }

    private static string? FormOf(ArgumentResult result)
    {
        var written = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        if (forms.Contains(written))
        {
            return written;
        }

        result.AddError($"--as takes {string.Join(", ", forms[..^1])} or {forms[^1]}");
        return null;
    }

    private static int Run(FileInfo file, string form, InvocationConfiguration console)
    {
        if (RackFileArgument.Read(file.ToString(), console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        var charts = RackChart.AllOf(site);
        if (form == "table")
        {
            Print(charts, Screen.Over(console.Output));
        }
        else
        {
            console.Output.Write(form == "markdown" ? ChartMarkdown.Of(charts) : ChartHtml.Of(charts));
        }

        return ExitCode.AsExpected;
    }

    private static void Print(ImmutableArray<RackChart> charts, IAnsiConsole console)
    {
        foreach (var chart in charts)
        {
            console.WriteLine($"{chart.Site.Name}, {chart.Rack.Name}");
            console.Write(Matrix(chart));
            foreach (var line in chart.Lines)
            {
                Wrapped(console, $"  {line.Row.Id}: {Words(line)}");
            }

            if (!chart.Lacking.IsEmpty)
            {
                console.WriteLine();
                console.WriteLine("Rows that this rack lacks:");
            }

            foreach (var gap in chart.Lacking)
            {
                Wrapped(console, $"  {gap.Row.Id} at {gap.Place} needs {gap.Row.Needs}: {gap.Row.Cause}");
            }

            console.WriteLine();
        }

        Wrapped(console, ChartWords.Legend);
        console.WriteLine();
        Wrapped(console, ChartWords.Caution);
    }

    private static Table Matrix(RackChart chart)
    {
        var table = new Table { Border = TableBorder.Horizontal };
        string[] titles = ["", .. chart.Columns.Select(column => column.Title)];
        table.AddColumns([.. titles.Select(title => new TableColumn(new Text(title)))]);
        foreach (var line in chart.Lines)
        {
            string[] cells = [line.Row.Id, .. line.Effects];
            table.AddRow(cells.Select(cell => new Text(cell)));
        }

        return table;
    }

    private static string Words(ChartLine line)
    {
        var within = line.Settings.Length == 0 ? "" : $" ({line.Settings})";
        return $"{line.Row.Cause}{within}; {line.Row.EffectWords}; back: {line.Row.ComesBack}";
    }

    private static void Wrapped(IAnsiConsole console, string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }
}
