using RackController.Bench;
using RackController.Model;

namespace RackController.Verbs;

/// <summary>The rack file of a verb that foretells; a scenario in its place is recognised.</summary>
internal static class RackFileFor
{
    /// <summary>Reads it.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="error">Where complaints go.</param>
    /// <returns>The site; null when the file is not right.</returns>
    public static Site? Verb(string path, TextWriter error)
    {
        if (!ScenarioReader.LooksLikeScenario(path))
        {
            return SiteFile.Read(path, error);
        }

        error.WriteLine($"{path}:1:1: this is a scenario, and a rack file belongs here: name the file after its `rack-file:`");
        return null;
    }
}
