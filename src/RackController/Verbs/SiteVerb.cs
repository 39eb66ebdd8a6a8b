using System.CommandLine;
using RackController.Model;
using RackController.Service;

namespace RackController.Verbs;

/// <summary>A verb about the site of one rack file and the folder of its journal.</summary>
internal static class SiteVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="description">What it does.</param>
    /// <param name="fileDescription">Which rack file it takes.</param>
    /// <param name="run">Does it, once the file was read, with the options of its own, and gives the exit code.</param>
    public static Command Create(string name, string description, string fileDescription, Func<SiteRequest, ParseResult, int> run)
    {
        var file = Parsing.File(fileDescription);
        var state = new Option<DirectoryInfo?>("--state")
        {
            HelpName = "folder",
            Description = "The folder of its journal. Default: that of the service for its own rack file, else the one that `run` uses.",
        };
        var verb = new Command(name, description) { file, state };
        verb.SetAction(parsed =>
        {
            var (path, console) = (parsed.GetRequiredValue(file).ToString(), parsed.InvocationConfiguration);
            return RackFileArgument.Read(path, console.Error) is { } site
                ? run(
                    new SiteRequest(path, site, StateFolder.OfDriver(parsed.GetValue(state)?.ToString(), path, site.Io), console.Output),
                    parsed)
                : ExitCode.AnswerIsNo;
        });
        return verb;
    }
}

/// <summary>What such a verb was asked.</summary>
/// <param name="File">The path of the rack file.</param>
/// <param name="Site">What it says.</param>
/// <param name="Folder">The folder of its journal.</param>
/// <param name="Output">Where answers go.</param>
internal sealed record SiteRequest(string File, Site Site, StateFolder Folder, TextWriter Output);
