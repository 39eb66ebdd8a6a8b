using RackController.RackFile.Binding;
using RackController.RackFile.Building;
using RackController.RackFile.Checks;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>
/// Reads a rack file into a site. Whatever a person may have written, it answers with complaints and never with an
/// exception, and it says everything that is wrong at once.
/// </summary>
public static class RackFileReader
{
    /// <summary>Reads a rack file.</summary>
    /// <param name="path">Its path, which complaints repeat.</param>
    public static RackFileResult Read(string path)
    {
        var complaints = new Complaints(path);
        var outcome = TextFile.Read(path, complaints, out var text);
        return outcome == TextFileOutcome.Read
            ? Parse(text, path)
            : new RackFileResult(null, complaints.Sorted(), CouldBeRead: outcome != TextFileOutcome.Unreadable);
    }

    /// <summary>Reads the text of a rack file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">What complaints call the file.</param>
    public static RackFileResult Parse(string text, string fileName)
    {
        var complaints = new Complaints(fileName);
        var site = Bind(text, complaints);
        return new RackFileResult(
            site is null || complaints.HasErrors ? null : SiteBuilder.Build(site), complaints.Sorted(), Text: text);
    }

    private static SitePart? Bind(string text, Complaints complaints)
    {
        if (YamlText.Read(text, complaints) is not { } root)
        {
            return null;
        }

        if (!FileRecognition.LooksLikeARackFile(root) && FileRecognition.LooksLikeAScenario(root))
        {
            complaints.Refuse(
                root.Place, "this is a scenario, and a rack file belongs here",
                "name the rack file that the scenario runs on");
            return null;
        }

        if (!FileRecognition.LooksLikeARackFile(root) && FileRecognition.LooksLikeOrders(root))
        {
            complaints.Refuse(
                root.Place, "this is an orders file, and a rack file belongs here",
                "name the rack file that stands under its `racks`, or give the orders to `plan`");
            return null;
        }

        if (SiteMapping.Instance.TryRead("rack file", root, complaints, out var site))
        {
            SiteChecks.Run(site, complaints);
        }

        return site;
    }
}
