using System.CommandLine;
using RackController.Live;
using RackController.Model;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>wiring FILE</c>: leads a person through a new rack, one sensor and one relay at a time.</summary>
internal static class WiringVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create() => SiteVerb.Create(
        "wiring", "Walk through a new rack, one sensor and one relay at a time, and put it on record.", "The rack file.",
        (asked, _) => Run(asked));

    private static int Run(SiteRequest asked)
    {
        if (!Terminal.CanShow || Console.IsInputRedirected)
        {
            throw new CouldNotRunException($"{asked.File}: a walk needs a person at a terminal: run it on one, over ssh for instance");
        }

        if (asked.Folder.IsOfService && Environment.IsPrivilegedProcess)
        {
            throw new CouldNotRunException(
                $"{asked.File}: a walk of root leaves a journal that the service cannot write: "
                + $"sudo -u rackcontroller rackcontroller wiring {asked.File}");
        }

        var results = Walk(asked.Site, asked.Folder);
        Print(asked.Site, results, asked.Output);
        return results.All(result => result.Outcome == WiringOutcome.Right) ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private static IReadOnlyList<WiringResult> Walk(Site site, StateFolder folder)
    {
        using var interruption = new Interruption(drivesLoads: true);
        using var screen = new WiringScreen(site.Name);
        return WiringSession.Walk(site, folder, $"{Environment.UserName} at the terminal", screen.Show, interruption.Token);
    }

    private static void Print(Site site, IReadOnlyList<WiringResult> results, TextWriter output)
    {
        foreach (var result in results)
        {
            output.WriteLine($"{Word(result.Outcome),-8}  {result.Name}: {result.Text}");
        }

        var wrong = results.Count(result => result.Outcome == WiringOutcome.Wrong);
        var skipped = results.Count(result => result.Outcome == WiringOutcome.Skipped);
        var record = skipped < results.Count ? "; what was answered is in the journal" : "";
        output.WriteLine($"{results.Count - wrong - skipped} right, {wrong} wrong, {skipped} skipped{record}");
        if (wrong > 0)
        {
            output.WriteLine("Mend the wiring or the rack file with the plug pulled, and walk through it again.");
        }

        output.WriteLine(SafeStateWords.Of(site));
    }

    private static string Word(WiringOutcome outcome) => outcome switch
    {
        WiringOutcome.Right => "right",
        WiringOutcome.Wrong => "wrong",
        _ => "skipped",
    };
}
