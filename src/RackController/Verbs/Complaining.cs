using System.Collections.Immutable;
using RackController.RackFile;

namespace RackController.Verbs;

/// <summary>How the verbs say what is wrong with a file.</summary>
internal static class Complaining
{
    /// <summary>Prints every complaint on its line.</summary>
    /// <param name="complaints">What is wrong or unwise.</param>
    /// <param name="couldBeRead">Whether there was a file to judge.</param>
    /// <param name="output">Where to print.</param>
    /// <returns>The exit code of a verb that needed the file.</returns>
    public static int Print(ImmutableArray<Complaint> complaints, bool couldBeRead, TextWriter output)
    {
        foreach (var complaint in complaints)
        {
            output.WriteLine(complaint);
        }

        return couldBeRead ? ExitCode.AnswerIsNo : ExitCode.CouldNotRun;
    }
}
