using System.CommandLine;
using System.Diagnostics;
using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>bench FILE</c>: runs a scenario in virtual time and says whether it held. <c>bench --measure</c>: says how fast and
/// how exact all of that is on this machine.</summary>
internal static class BenchVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A scenario, such as config/scenarios/first-week.yaml.");
        file.Arity = ArgumentArity.ZeroOrOne;
        var measure = new Option<bool>("--measure")
        {
            Description = "Measure how fast and how exact the bench is on this machine, instead of running a scenario.",
        };
        var folder = new Option<DirectoryInfo>("--out")
        {
            HelpName = "folder",
            Description = "The folder for report.html, result.json and junit.xml. Default: out/ and the scenario's name.",
        };
        var verb = new Command("bench", "Run a scenario in virtual time and say whether it held.") { file, folder, measure };
        verb.Validators.Add(parsed =>
        {
            if (parsed.GetResult(file) is { Tokens.Count: > 0 } == parsed.GetValue(measure))
            {
                parsed.AddError("name a scenario, such as config/scenarios/first-week.yaml, or write --measure");
            }
        });
        verb.SetAction(parsed => parsed.GetValue(measure)
            ? FiguresPage.MeasureAndPrint(parsed.InvocationConfiguration.Output)
            : Run(
                parsed.GetRequiredValue(file), parsed.GetValue(folder), parsed.InvocationConfiguration.Output,
                parsed.InvocationConfiguration.Error));
        return verb;
    }

    private static int Run(FileInfo file, DirectoryInfo? folder, TextWriter output, TextWriter error)
    {
        var reading = ScenarioReader.Read(file.ToString());
        if (reading.Scenario is not { } scenario)
        {
            return Complaining.Print(reading.Complaints, reading.CouldBeRead, error);
        }

        var reports = ReportFolder.Open(folder?.ToString() ?? Path.Combine("out", scenario.Name));
        var watch = Stopwatch.StartNew();
        var result = Screen.IsTerminal(output) ? RunWithProgress(scenario, Screen.Over(output)) : ScenarioRun.Run(scenario);
        var wall = watch.Elapsed;
        reports.Write(result);
        BenchSummary.Print(result, wall, reports, Screen.Over(output));
        return result.Passed ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private static RunResult RunWithProgress(Scenario scenario, IAnsiConsole console)
    {
        RunResult? result = null;
        console.Progress().AutoClear(true).Start(progress =>
        {
            var task = progress.AddTask(Markup.Escape(scenario.Name), maxValue: 1);
            result = ScenarioRun.Run(scenario, done => task.Value = done);
        });
        return result!;
    }
}
