using System.CommandLine;
using RackController.Live;
using RackController.Model;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>run [FILE]</c>: drives the racks of a file, with a live screen on a terminal and a log elsewhere.</summary>
internal static class RunVerb
{
    private const double Fastest = 1000;

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = new Argument<FileInfo?>("file")
        {
            Description = "The rack file; the demo rack when left out.",
            Arity = ArgumentArity.ZeroOrOne,
            CustomParser = Parsing.PathOf,
        };
        var state = new Option<DirectoryInfo?>("--state")
        {
            HelpName = "folder",
            Description = "The folder for journal, lock and log. Default: one of this user's own.",
        };
        var speed = new Option<double>("--speed")
        {
            Description = "Run a simulated rack this many times faster than real time: 1 to 1000.",
            HelpName = "times",
            DefaultValueFactory = _ => 1,
            CustomParser = result => Parsing.Number(1, Fastest, result, $"--speed takes a number from 1 to {Fastest}"),
        };
        var log = new Option<bool>("--log") { Description = "Write a log to the terminal instead of the live screen." };

        var verb = new Command("run", "Drive the racks of a file; the verb when none is given.") { file, state, speed, log };
        verb.SetAction((parsed, _) => RunAsync(
            new RunRequest(
                parsed.GetValue(file)?.ToString() ?? DemoFile(), parsed.GetValue(state)?.ToString(), parsed.GetValue(speed),
                ShowScreen: !parsed.GetValue(log) && Terminal.CanShow),
            parsed.InvocationConfiguration));
        return verb;
    }

    /// <summary>What the program does when no verb is given: drives the demo rack.</summary>
    /// <param name="parsed">The command line.</param>
    public static Task<int> RunDemoAsync(ParseResult parsed) => RunAsync(
        new RunRequest(DemoFile(), State: null, Speed: 1, ShowScreen: Terminal.CanShow),
        parsed.InvocationConfiguration);

    /// <summary>The demo rack of the folder the person is in, else the one beside the program.</summary>
    private static string DemoFile()
    {
        var here = Path.Combine("config", "demo-four-tier.yaml");
        return File.Exists(here) ? here : Path.Combine(AppContext.BaseDirectory, here);
    }

    private static async Task<int> RunAsync(RunRequest request, InvocationConfiguration console)
    {
        var (file, state, speed, showScreen) = request;
        if (RackFileArgument.Read(file, console.Error, out var text) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        if (speed > 1 && site.Io is not SimulatedIo)
        {
            console.Error.WriteLine($"{file}: --speed is for simulated racks; this one switches real loads: leave it out");
            return ExitCode.WrongUse;
        }

        var ending = await RackService.RunAsync(site, new ServiceOptions
        {
            RackFile = file,
            RackFileText = text,
            Folder = StateFolder.Choose(state, file, site.Io, isFast: speed > 1),
            Speed = speed,
            Screen = showScreen ? (rack, end) => new LiveScreen(rack, speed).ShowAsync(end) : null,
        }).ConfigureAwait(false);
        return Report(site, ending, console.Output, console.Error);
    }

    private static int Report(Site site, ServiceEnding ending, TextWriter output, TextWriter error)
    {
        if (ending.SafeStateFault is { } fault)
        {
            error.WriteLine($"A load may not be in its safe state: {fault}. Cut the supply by hand.");
        }
        else
        {
            output.WriteLine(SafeStateWords.Of(site));
        }

        if (ending.Defect is { } defect)
        {
            error.WriteLine($"The controller met a defect of its own and ended: {defect}. The log has the details.");
        }

        return ending is { Defect: null, SafeStateFault: null } ? ExitCode.AsExpected : ExitCode.CouldNotRun;
    }

    private sealed record RunRequest(string File, string? State, double Speed, bool ShowScreen);
}
