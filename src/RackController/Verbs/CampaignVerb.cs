using System.CommandLine;
using System.Diagnostics;
using RackController.Bench;

namespace RackController.Verbs;

/// <summary><c>campaign FILE</c>: tries every fault of the catalogue on the racks of a file and says what got through.</summary>
internal static class CampaignVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, such as config/demo-four-tier.yaml.");
        var verb = new Command("campaign", "Try every fault of the catalogue on a simulated rack and say what got through.") { file };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.InvocationConfiguration));
        return verb;
    }

    private static int Run(FileInfo file, InvocationConfiguration console)
    {
        if (RackFileArgument.Read(file.ToString(), console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        var watch = Stopwatch.StartNew();
        var plan = new CampaignPlan(site, new CampaignOptions());
        var outcomes = Campaign.Run(plan, outcome =>
        {
            if (outcome.Failed)
            {
                console.Output.WriteLine($"{outcome.Class}: {outcome.Case.Name}: {outcome.Seen}");
            }
        }, CancellationToken.None);
        var days = outcomes.Sum(outcome => outcome.Length.TotalDays) * site.Racks.Length;
        console.Output.WriteLine(
            $"{outcomes.Length} cases, {days:0} rack-days in {watch.Elapsed.TotalSeconds:0.0} s, "
            + $"{days / watch.Elapsed.TotalSeconds:0} a second");
        return outcomes.Any(outcome => outcome.Failed) ? ExitCode.AnswerIsNo : ExitCode.AsExpected;
    }
}
