namespace RackController.Conventions.Docs;

/// <summary>A command as a page shows it, and what it is said to print.</summary>
internal sealed record ShownCommand(string Place, string Text, IReadOnlyList<string> Shown)
{
    private const string Start = "dotnet run --project src/RackController --";

    /// <summary>Stands in a shown output for lines that are left out, or that differ from run to run.</summary>
    private const string LeftOut = "...";

    /// <summary>Whether it runs the program; anything else is shown in a block that is not <c>console</c>.</summary>
    public bool RunsTheProgram => Text.StartsWith(Start, StringComparison.Ordinal);

    /// <summary>What the program is handed.</summary>
    public string[] Arguments => Text[Start.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The first shown line that the output lacks, or has in another place; null when all is as shown.</summary>
    public string? FirstLineMissingFrom(IReadOnlyList<string> output)
    {
        var next = 0;
        var mayLeap = false;
        foreach (var line in Shown.Select(line => line.TrimEnd()))
        {
            if (line.Trim() == LeftOut)
            {
                mayLeap = true;
                continue;
            }

            var at = mayLeap ? IndexFrom(output, next, line) : next;
            if (at < 0 || at >= output.Count || output[at].TrimEnd() != line)
            {
                return line;
            }

            next = at + 1;
            mayLeap = false;
        }

        return null;
    }

    private static int IndexFrom(IReadOnlyList<string> output, int start, string line)
    {
        for (var i = start; i < output.Count; i++)
        {
            if (output[i].TrimEnd() == line)
            {
                return i;
            }
        }

        return -1;
    }
}
