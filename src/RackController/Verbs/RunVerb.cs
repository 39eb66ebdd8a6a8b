using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Net;
using RackController.Live;
using RackController.Model;
using RackController.Page;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>run [FILE]</c>: drives the racks of a file, with a live screen on a terminal and a log elsewhere.</summary>
internal static class RunVerb
{
    private const double Fastest = 1000;

    // Of the ports that nobody has registered for a service of theirs (IANA, from memory).
    private static readonly IPEndPoint DefaultPage = new(IPAddress.Loopback, 8474);

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
        var page = new Option<PagePlace>("--page")
        {
            HelpName = "address",
            Description = "Where to serve the page: a port, an address with a port, or off. Beyond this machine by HTTPS, and once "
                + $"the first person is set up. Default: the sockets of the supervisor, else {DefaultPage}, for this machine only.",
            DefaultValueFactory = _ => new PagePlace(DefaultPage),
            CustomParser = PageAddress,
        };
        var certificate = new Option<FileInfo?>("--certificate")
        {
            HelpName = "file",
            Description = "Your certificate for the page, PEM, with --key. Default: one that the page makes itself.",
            CustomParser = Parsing.PathOf,
        };
        var key = new Option<FileInfo?>("--key")
        {
            HelpName = "file",
            Description = "The key of that certificate, PEM, without a password.",
            CustomParser = Parsing.PathOf,
        };
        var log = new Option<bool>("--log") { Description = "Write a log to the terminal instead of the live screen." };

        var verb = new Command("run", "Drive the racks of a file; the verb when none is given.")
        {
            file, state, speed, page, certificate, key, log,
        };
        verb.Validators.Add(NeedsBoth(certificate, key));
        verb.SetAction((parsed, _) => RunAsync(
            new RunRequest(
                parsed.GetValue(file)?.ToString() ?? DemoFile(), parsed.GetValue(state)?.ToString(), parsed.GetValue(speed),
                new PageRequest(
                    parsed.GetValue(page)?.Listen, MayInherit: parsed.GetResult(page) is null or { Implicit: true },
                    parsed.GetValue(certificate) is { } own
                        ? new CertificateFiles(own.ToString(), parsed.GetRequiredValue(key)!.ToString())
                        : null),
                ShowScreen: !parsed.GetValue(log) && Terminal.CanShow),
            parsed.InvocationConfiguration));
        return verb;
    }

    /// <summary>What the program does when no verb is given: drives the demo rack.</summary>
    /// <param name="parsed">The command line.</param>
    public static Task<int> RunDemoAsync(ParseResult parsed) => RunAsync(
        new RunRequest(
            DemoFile(), State: null, Speed: 1, new PageRequest(DefaultPage, MayInherit: true, null), ShowScreen: Terminal.CanShow),
        parsed.InvocationConfiguration);

    /// <summary>The demo rack of the folder the person is in, else the one beside the program.</summary>
    private static string DemoFile()
    {
        var here = Path.Combine("config", "demo-four-tier.yaml");
        return File.Exists(here) ? here : Path.Combine(AppContext.BaseDirectory, here);
    }

    private static PagePlace PageAddress(ArgumentResult result)
    {
        var asked = result.Tokens[0].Value;
        if (asked == "off")
        {
            return new PagePlace(null);
        }

        if (ushort.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port > 0)
        {
            return new PagePlace(new IPEndPoint(IPAddress.Loopback, port));
        }

        if (IPEndPoint.TryParse(asked, out var address) && address.Port > 0)
        {
            return new PagePlace(address);
        }

        result.AddError($"--page takes a port (8474), an address with a port (0.0.0.0:8474), or off, and not `{asked}`");
        return new PagePlace(null);
    }

    private static Action<CommandResult> NeedsBoth(Option<FileInfo?> certificate, Option<FileInfo?> key) => result =>
    {
        if (result.GetResult(certificate) is null != result.GetResult(key) is null)
        {
            result.AddError("--certificate and --key go together: give both");
        }
    };

    private static PageOptions? PageOf(PageRequest asked, string file, StateFolder folder, double speed)
    {
        if (asked.Listen is not { } listen)
        {
            return null;
        }

        if (asked.Certificate is { } certificate)
        {
            PageCertificate.Check(certificate);
        }

        ImmutableArray<InheritedSocket> sockets = asked.MayInherit ? InheritedSocket.All() : [];
        return new PageOptions(listen, file, folder, speed)
        {
            Certificate = asked.Certificate,
            Sockets = sockets,
            CropsFile = ShippedFiles.Crops(file),
        };
    }

    private static async Task<int> RunAsync(RunRequest request, InvocationConfiguration console)
    {
        var (file, state, speed, page, showScreen) = request;
        if (RackFileArgument.Read(file, console.Error, out var text) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        if (speed > 1 && site.Io is not SimulatedIo)
        {
            console.Error.WriteLine($"{file}: --speed is for simulated racks; this one switches real loads: leave it out");
            return ExitCode.WrongUse;
        }

        var folder = StateFolder.Choose(state, file, site.Io, isFast: speed > 1);
        var served = PageOf(page, file, folder, speed);
        while (true)
        {
            var ending = await RackService.RunAsync(site, new ServiceOptions
            {
                RackFile = file,
                RackFileText = text,
                Folder = folder,
                Speed = speed,
                Page = served is null ? null : new PageServer(served).ServeAsync,
                Screen = showScreen && !ServiceProgram.IsThis ? (rack, end) => new LiveScreen(rack, speed).ShowAsync(end) : null,
            }).ConfigureAwait(false);
            if (ending is not { StartAgain: true, Defect: null, SafeStateFault: null })
            {
                return Report(site, ending, console.Output, console.Error);
            }

            // A file that somebody broke meanwhile never replaces the one that was in use.
            (site, text) = RackFileArgument.Read(file, console.Error, out var fresh) is { } changed ? (changed, fresh) : (site, text);
        }
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

    private sealed record RunRequest(string File, string? State, double Speed, PageRequest Page, bool ShowScreen);

    private sealed record PageRequest(IPEndPoint? Listen, bool MayInherit, CertificateFiles? Certificate);

    /// <summary>Where the page is served.</summary>
    /// <param name="Listen">The address; null for no page.</param>
    private sealed record PagePlace(IPEndPoint? Listen);
}
