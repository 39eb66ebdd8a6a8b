using System.CommandLine;
using System.CommandLine.Parsing;
using RackController.Service;
using RackController.Verbs;

namespace RackController;

/// <summary>
/// The verbs, and what is the same for all of them: a wrong command line exits with 2, whatever could not be tried exits
/// with 3 and one line. Nobody who uses the program sees a stack trace.
/// </summary>
internal static class CommandLine
{
    /// <summary>Runs one command line.</summary>
    /// <param name="args">The arguments, without the program's name.</param>
    /// <param name="output">Where answers go.</param>
    /// <param name="error">Where complaints go.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter error)
    {
        var parsed = Root().Parse(args);
        if (parsed.Errors.Count > 0)
        {
            return ComplainOf(parsed, error);
        }

        try
        {
            return parsed.Invoke(new InvocationConfiguration
            {
                Output = output,
                Error = error,
                EnableDefaultExceptionHandler = false,

                // Whoever runs for long ends by itself when told to, outputs safe first, and says when that is done.
                ProcessTerminationTimeout = null,
            });
        }
        catch (CouldNotRunException cannot)
        {
            error.WriteLine(cannot.Message);
            return ExitCode.CouldNotRun;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Files are answered for where they are used; what is left is the place where answers go.
            error.WriteLine($"the answer cannot be written ({e.Message.TrimEnd('.')}): make room, or send it elsewhere");
            return ExitCode.CouldNotRun;
        }
        catch (Exception defect) when (defect is not OutOfMemoryException)
        {
            error.WriteLine($"something that should be impossible happened ({defect.GetType().Name}): {defect.Message}");
            return ExitCode.CouldNotRun;
        }
    }

    // One clear line for each mistake, and where to read on, rather than a page of help.
    private static int ComplainOf(ParseResult parsed, TextWriter error)
    {
        foreach (var mistake in parsed.Errors.Select(mistake => mistake.Message.TrimEnd('.')).Distinct())
        {
            error.WriteLine($"{mistake}: see {string.Join(' ', PathTo(parsed.CommandResult))} --help");
        }

        return ExitCode.WrongUse;
    }

    // The first is the name that the program was started by, as its help has it.
    private static IEnumerable<string> PathTo(CommandResult command) => command.Parent is CommandResult parent
        ? PathTo(parent).Append(command.Command.Name)
        : [command.Command.Name];

    /// <summary>Every verb with its arguments and options, in the order of the help.</summary>
    public static RootCommand Root()
    {
        var root = new RootCommand("Drives multi-tier flood-and-drain racks, and proves their schedules on a simulated one.")
        {
            RunVerb.Create(),
            MakeSafeVerb.Create(),
        };
        if (!ServiceProgram.IsThis)
        {
            AddWorkOfThePerson(root);
        }

        root.Add(NoticesVerb.Create());
        root.SetAction((parsed, _) => RunVerb.RunDemoAsync(parsed));
        return root;
    }

    private static void AddWorkOfThePerson(RootCommand root)
    {
        Command[] verbs =
        [
            BenchVerb.Create(),
            CampaignVerb.Create(),
            CheckVerb.Create(),
            PlanVerb.Create(),
            AdviseVerb.Create(),
            DayVerb.Create(),
            WhyVerb.Create(),
            CauseAndEffectVerb.Create(),
            ReplayVerb.Create(),
            ProofTestsVerb.Create(),
            UpkeepVerb.Create(),
            DoctorVerb.Create(),
            WiringVerb.Create(),
            TuneVerb.Create(),
            PeopleVerb.Create(),
        ];
        foreach (var verb in verbs)
        {
            root.Add(verb);
        }
    }
}
