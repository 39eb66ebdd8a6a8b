using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Verbs;

/// <summary>The rack file that a verb was given.</summary>
internal static class RackFileArgument
{
    /// <summary>Reads it, and puts every complaint on a line of its own.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="error">Where complaints go.</param>
    /// <returns>The site; null when the file cannot be run.</returns>
    /// <exception cref="CouldNotRunException">There is no file to judge.</exception>
    public static Site? Read(string path, TextWriter error) => Read(path, error, out _);

    /// <summary>Reads it, with what it says.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="error">Where complaints go.</param>
    /// <param name="text">What it says, for the record.</param>
    /// <returns>The site; null when the file cannot be run.</returns>
    /// <exception cref="CouldNotRunException">There is no file to judge.</exception>
    public static Site? Read(string path, TextWriter error, out string text)
    {
        var result = RackFileReader.Read(path);
        if (!result.CouldBeRead)
        {
            throw new CouldNotRunException(string.Join('\n', result.Complaints));
        }

        foreach (var complaint in result.Complaints)
        {
            error.WriteLine(complaint);
        }

        text = result.Text;
        return result.Site;
    }
}
