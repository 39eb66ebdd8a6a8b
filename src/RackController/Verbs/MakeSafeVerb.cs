using System.CommandLine;
using RackController.Model;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>make-safe FILE</c>: puts every load of a rack in its safe state, when whoever drove it is gone.</summary>
internal static class MakeSafeVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("The rack file.");
        var verb = new Command("make-safe", "Put every load in its safe state, when whoever drove the rack is gone.") { file };
        verb.SetAction(parsed => Run(
            parsed.GetRequiredValue(file), parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error));
        return verb;
    }

    private static int Run(FileInfo file, TextWriter output, TextWriter error)
    {
        if (RackFileArgument.Read(file.ToString(), error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        if (MakeSafe.Run(site) is { } fault)
        {
            throw new CouldNotRunException($"{file}: a load may not be in its safe state: {fault}: cut the supply by hand");
        }

        output.WriteLine(site.Io is SimulatedIo ? $"{file}: simulated, nothing to switch" : SafeStateWords.Of(site));
        return ExitCode.AsExpected;
    }
}
