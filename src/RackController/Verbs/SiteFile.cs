using System.Text;
using RackController.Model;
using RackController.RackFile;

namespace RackController.Verbs;

/// <summary>The rack file that a verb was given.</summary>
internal static class SiteFile
{
    private const int NamesOnALine = 4;

    /// <summary>Reads it, and puts every complaint on a line of its own.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="error">Where complaints go.</param>
    /// <returns>The site; null when the file cannot be run.</returns>
    /// <exception cref="CannotRunException">There is no file to judge.</exception>
    public static Site? Read(string path, TextWriter error)
    {
        var result = RackFileReader.Read(path);
        if (!result.CouldBeRead)
        {
            throw new CannotRunException(string.Join('\n', result.Complaints));
        }

        foreach (var complaint in result.Complaints)
        {
            error.WriteLine(complaint);
        }

        return result.Site;
    }

    /// <summary>What the safe states are, load by load.</summary>
    /// <param name="site">The site.</param>
    public static string SafeStates(Site site) =>
        "Every load is in its safe state.\n" + Names(site, SwitchState.Off, "off") + Names(site, SwitchState.On, "on ").TrimEnd();

    private static string Names(Site site, SwitchState state, string word)
    {
        var lines = new StringBuilder();
        var names = site.Loads.Where(load => load.SafeState == state).Select(load => load.Name).ToList();
        foreach (var line in names.Chunk(NamesOnALine))
        {
            lines.Append("  ").Append(word).Append("  ").AppendJoin(", ", line).Append('\n');
        }

        return lines.ToString();
    }
}
