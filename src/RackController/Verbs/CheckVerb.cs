using System.CommandLine;
using RackController.Bench;
using RackController.PlanFiles;
using RackController.RackFile;

namespace RackController.Verbs;

/// <summary><c>check FILE</c>: says whether a file of ours is right (a rack file, a scenario, orders or crops), and what was understood of
/// it.</summary>
internal static class CheckVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, a scenario, orders or crops, such as config/demo-four-tier.yaml.");
        var verb = new Command("check", "Say whether a rack file, a scenario, orders or crops are right.") { file };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file).ToString(), parsed.InvocationConfiguration.Output));
        return verb;
    }

    private static int Run(string path, TextWriter output) => FileRecognition.KindOf(path) switch
    {
        PlainFile.Scenario => CheckScenario(path, output),
        PlainFile.Orders => CheckOrders(path, output),
        PlainFile.Crops => CheckCrops(path, output),
        _ => CheckRackFile(path, output),
    };

    private static int CheckRackFile(string path, TextWriter output)
    {
        var read = RackFileReader.Read(path, Today.At);
        var exitCode = Complaining.Print(read.Complaints, read.CouldBeRead, output);
        if (read.Site is not { } site)
        {
            return exitCode;
        }

        SiteSummary.Print(site, path, Screen.Over(output));
        return ExitCode.AsExpected;
    }

    private static int CheckOrders(string path, TextWriter output)
    {
        var read = OrdersReader.Read(path, null, Today.At);
        var exitCode = Complaining.Print(read.Complaints, read.CouldBeRead, output);
        if (read.Season is not { Request: var request })
        {
            return exitCode;
        }

        PlanFilesSummary.Print(path, request, Screen.Over(output));
        return ExitCode.AsExpected;
    }

    private static int CheckCrops(string path, TextWriter output)
    {
        var read = CropsReader.Read(path);
        var exitCode = Complaining.Print(read.Complaints, read.CouldBeRead, output);
        if (!read.IsRight)
        {
            return exitCode;
        }

        PlanFilesSummary.Print(path, read.Crops, Screen.Over(output));
        return ExitCode.AsExpected;
    }

    private static int CheckScenario(string path, TextWriter output)
    {
        var read = ScenarioReader.Read(path);
        if (read.Scenario is not { } scenario)
        {
            return Complaining.Print(read.Complaints, read.CouldBeRead, output);
        }

        Complaining.Print(read.Complaints, couldBeRead: true, output);
        var width = Screen.Over(output).Profile.Width;
        output.WriteLine($"{path} is right.");
        foreach (var line in Wrapping.Lines(scenario.About, width))
        {
            output.WriteLine(line);
        }

        output.WriteLine();
        output.WriteLine(
            $"It runs {scenario.Site.Name} from {LogText.LocalMinute(scenario.Site, scenario.Start)} "
            + $"for {Spans.Words(scenario.Length)}, with {EventCount(scenario.Events.Length)} from outside.");
        var promises = scenario.Expectations.Select(expectation => $"  expects that {expectation.Name}");
        var exceptions = scenario.Accepts.Select(
            accepted => $"  accepts the hazard {HazardWords.Key(accepted.Kind)}, stopped by {accepted.Backstop}");
        foreach (var line in promises.Concat(exceptions).SelectMany(text => Wrapping.Lines(text, width)))
        {
            output.WriteLine(line);
        }

        return ExitCode.AsExpected;
    }

    private static string EventCount(int events) => events switch
    {
        0 => "no events",
        1 => "1 event",
        _ => $"{events} events",
    };
}
