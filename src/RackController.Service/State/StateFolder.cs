using RackController.Model;

namespace RackController.Service;

/// <summary>Where journal, lock and log of one rack file are kept.</summary>
/// <param name="Path">The folder.</param>
/// <param name="LogPath">The folder of the log; null for one below the folder.</param>
public sealed record StateFolder(string Path, string? LogPath = null)
{
    /// <summary>The journal.</summary>
    public string Journal => System.IO.Path.Combine(Path, "journal.db");

    /// <summary>The lock that keeps a second process away.</summary>
    public string Lock => System.IO.Path.Combine(Path, "lock");

    /// <summary>The operational log; files of earlier days lie beside it.</summary>
    public string Log => System.IO.Path.Combine(LogPath ?? System.IO.Path.Combine(Path, "log"), "rackcontroller-.log");

    /// <summary>The folder to use: what the person asked for; else what systemd gives the service; else the XDG state folder
    /// of the user. Simulated racks get folders of their own below it, by the name of their rack file, so that what a demo
    /// remembers is never taken for what a real rack did.</summary>
    /// <param name="asked">What the person asked for; null when nothing.</param>
    /// <param name="rackFile">The path of the rack file.</param>
    /// <param name="io">Where its relays are.</param>
    /// <param name="isFast">Whether the run is faster than real time.</param>
    /// <exception cref="CouldNotRunException">Nobody says where, and the user has no home.</exception>
    public static StateFolder Choose(string? asked, string rackFile, IoPlan io, bool isFast)
    {
        if (asked is not null)
        {
            return new StateFolder(System.IO.Path.GetFullPath(asked));
        }

        var root = RootFromEnvironment();
        var name = System.IO.Path.GetFileNameWithoutExtension(rackFile);
        return io is SimulatedIo
            ? new StateFolder(System.IO.Path.Combine(root, "simulated", isFast ? name + "-fast" : name))
            : new StateFolder(root, FromSystemd("LOGS_DIRECTORY"));
    }

    private static string RootFromEnvironment()
    {
        if (FromSystemd("STATE_DIRECTORY") is { } given)
        {
            return given;
        }

        if (Environment.GetEnvironmentVariable("XDG_STATE_HOME") is { Length: > 0 } xdg)
        {
            return System.IO.Path.Combine(xdg, "rackcontroller");
        }

        // Without a home the path would be one below the folder that the person happens to be in.
        return Environment.GetFolderPath(Environment.SpecialFolder.UserProfile) is { Length: > 0 } home
            ? System.IO.Path.Combine(home, ".local", "state", "rackcontroller")
            : throw new CouldNotRunException("this user has no home folder to keep the journal in: name a folder with --state");
    }

    /// <summary>The first of the folders that systemd made for the service.</summary>
    private static string? FromSystemd(string variable) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } folders ? folders.Split(':')[0] : null;
}
