using System.CommandLine;

namespace RackController.Verbs;

/// <summary><c>check FILE</c>: says whether a rack file or a scenario is right.</summary>
internal static class CheckVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = new Argument<FileInfo>("file") { Description = "A rack file or a scenario." };
        var verb = new Command("check", "Say whether a rack file or a scenario is right.") { file };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.InvocationConfiguration.Output));
        return verb;
    }

    private static int Run(FileInfo file, TextWriter output)
    {
        if (!file.Exists)
        {
            throw new CannotRunException($"{file}: there is no such file: check the path");
        }

        output.WriteLine($"{file}: found");
        return ExitCode.AsExpected;
    }
}
