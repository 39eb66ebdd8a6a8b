using System.CommandLine;
using System.Diagnostics;
using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>bench FILE</c>: runs a scenario in virtual time and says whether it held.</summary>
internal static class BenchVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A scenario, such as config/scenarios/first-week.yaml.");
        var folder = new Option<DirectoryInfo>("--out")
        {
            HelpName = "folder",
            Description = "The folder for report.html, result.json and junit.xml. Default: out/ and the scenario's name.",
        };
        var verb = new Command("bench", "Run a scenario in virtual time and say whether it held.") { file, folder };
        verb.SetAction(parsed => Run(
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
