using RackController.Model;

namespace RackController.Service;

/// <summary>Where journal, lock and log of one rack file are kept.</summary>
/// <param name="Path">The folder.</param>
public sealed record StateFolder(string Path)
{
    /// <summary>The journal.</summary>
    public string Journal => System.IO.Path.Combine(Path, "journal.db");

    /// <summary>The lock that keeps a second process away.</summary>
    public string Lock => System.IO.Path.Combine(Path, "lock");

    /// <summary>The operational log; files of earlier days lie beside it.</summary>
    public string Log => System.IO.Path.Combine(Path, "log", "rackcontroller-.log");

    /// <summary>The folder to use: what the person asked for; else what systemd gives the service; else the XDG state folder
    /// of the user. Simulated racks get folders of their own below it, by the name of their rack file, so that what a demo
    /// remembers is never taken for what a real rack did.</summary>
    /// <param name="asked">What the person asked for; null when nothing.</param>
    /// <param name="rackFile">The path of the rack file.</param>
    /// <param name="io">Where its relays are.</param>
    /// <param name="isFast">Whether the run is faster than real time.</param>
    public static StateFolder Choose(string? asked, string rackFile, IoPlan io, bool isFast)
    {
        if (asked is not null)
        {
            return new StateFolder(System.IO.Path.GetFullPath(asked));
        }

        var root = RootFromEnvironment();
        var name = System.IO.Path.GetFileNameWithoutExtension(rackFile);
        return new StateFolder(io is SimulatedIo
            ? System.IO.Path.Combine(root, "simulated", isFast ? name + "-fast" : name)
            : root);
    }

    private static string RootFromEnvironment()
    {
        if (Environment.GetEnvironmentVariable("STATE_DIRECTORY") is { Length: > 0 } given)
        {
            return given.Split(':')[0];
        }

        var xdg = Environment.GetEnvironmentVariable("XDG_STATE_HOME");
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        return System.IO.Path.Combine(
            string.IsNullOrEmpty(xdg) ? System.IO.Path.Combine(home, ".local", "state") : xdg, "rackcontroller");
    }
}
