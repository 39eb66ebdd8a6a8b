using System.CommandLine;
using RackController.Notices;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>notices FILE</c>: tells of alarms by the ways that a rack file names, until it is stopped; with <c>--test</c> sends one test
/// message by each.</summary>
internal static class NoticesVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("The rack file of the service.");
        var state = new Option<DirectoryInfo?>("--state")
        {
            HelpName = "folder",
            Description = "The folder of its journal. Default: the one that `run` uses.",
        };
        var fast = new Option<bool>("--fast") { Description = "Tell of a simulated rack that is run faster than real time." };
        var test = new Option<bool>("--test") { Description = "Send a test message by every way at once, say what came of each, and end." };
        var verb = new Command("notices", "Tell of alarms by mail and signed requests, as the rack file says. Switches nothing.")
        {
            file, state, fast, test,
        };
        verb.SetAction((parsed, _) => RunAsync(
            new NoticesRequest(
                parsed.GetRequiredValue(file).ToString(), parsed.GetValue(state)?.ToString(), parsed.GetValue(fast), parsed.GetValue(test)),
            parsed.InvocationConfiguration));
        return verb;
    }

    private static async Task<int> RunAsync(NoticesRequest asked, InvocationConfiguration console)
    {
        if (RackFileArgument.Read(asked.File, console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        using var interruption = new Interruption();
        if (asked.IsTest)
        {
            // Whoever tries it is seldom the account of the service, whose controller it is about.
            var driver = asked.IsFast
                ? StateFolder.Choose(asked.State, asked.File, site.Io, isFast: true)
                : StateFolder.OfDriver(asked.State, asked.File, site.Io);
            return Report(
                asked.File, await NoticesService.TestAsync(site, driver, interruption.Token).ConfigureAwait(false), console.Output);
        }

        var folder = StateFolder.Choose(asked.State, asked.File, site.Io, asked.IsFast);
        await new NoticesService(asked.File, folder, console.Output).RunAsync(site, interruption.Token).ConfigureAwait(false);
        return ExitCode.AsExpected;
    }

    private static int Report(string file, IReadOnlyCollection<WayTest> results, TextWriter output)
    {
        foreach (var result in results)
        {
            output.WriteLine($"{result.Way}: {result.NotTried ?? result.Fault ?? "sent"}");
        }

        if (results.Count == 0)
        {
            output.WriteLine($"{file} asks for no notices: write `notices` with `mail`, `webhooks` or `alive`");
        }

        return results.Count > 0 && results.All(result => result.Fault is null) ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private sealed record NoticesRequest(string File, string? State, bool IsFast, bool IsTest);
}
