using RackController.Model;

namespace RackController.Service;

/// <summary>Where journal, lock and log of one rack file are kept.</summary>
/// <param name="Path">The folder.</param>
/// <param name="LogPath">The folder of the log; null for one below the folder.</param>
public sealed record StateFolder(string Path, string? LogPath = null)
{
    // Beside the controller's own folders and not in them: its unit lets the process that sends notices write there and nowhere else.
    private const string NoticesSuffix = "-notices";

    // Where the package has the service keep what is its own.
    private const string ServiceFiles = "/etc/rackcontroller";
    private const string ServiceState = "/var/lib/rackcontroller";
    private const string ServiceLog = "/var/log/rackcontroller";
    private const string ServiceRun = "/run/rackcontroller";

    /// <summary>The journal.</summary>
    public string Journal => System.IO.Path.Combine(Path, "journal.db");

    /// <summary>The growing book: what people did with batches and racks.</summary>
    public string Book => System.IO.Path.Combine(Path, "book.db");

    /// <summary>The folder of what the rack file said before the program changed it.</summary>
    public string RackFileVersions => System.IO.Path.Combine(Path, "rack-file-versions");

    /// <summary>The lock that keeps a second process away.</summary>
    public string Lock => System.IO.Path.Combine(Path, "lock");

    /// <summary>The operational log; files of earlier days lie beside it.</summary>
    public string Log => System.IO.Path.Combine(LogPath ?? System.IO.Path.Combine(Path, "log"), "rackcontroller-.log");

    /// <summary>The folder of what is good until the next boot, in memory; null for the folder itself.</summary>
    public string? RunPath { get; init; }

    /// <summary>The folder of the process that sends notices; null for one below the folder.</summary>
    public string? NoticesPath { get; init; }

    /// <summary>Where the controller says that its scans are good.</summary>
    public string Alive => System.IO.Path.Combine(RunPath ?? Path, "alive");

    /// <summary>What the process that sends notices keeps.</summary>
    public string Notices => System.IO.Path.Combine(NoticesFolder, "notices.json");

    /// <summary>Where the process that sends notices says that it is there.</summary>
    public string NoticesAlive => System.IO.Path.Combine(RunPath is null ? NoticesFolder : RunPath + NoticesSuffix, "alive");

    /// <summary>Keeps a second process from sending the same notices.</summary>
    public string NoticesLock => System.IO.Path.Combine(NoticesFolder, "lock");

    private string NoticesFolder => NoticesPath ?? System.IO.Path.Combine(Path, "notices");

    /// <summary>Whether it is that of the service that the package brings.</summary>
    public bool IsOfService => Path.StartsWith(ServiceState, StringComparison.Ordinal);

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

        var given = FromSystemd("STATE_DIRECTORY");
        return Below(
            given ?? OfUser(), rackFile, io, isFast, FromSystemd("LOGS_DIRECTORY"), FromSystemd("RUNTIME_DIRECTORY"), given is not null);
    }

    /// <summary>The folder of whoever drives the racks of a file, for those who look at it or change what it goes by: as
    /// <see cref="Choose"/>, but for the rack file of the service its folder, whoever asks.</summary>
    /// <param name="asked">What the person asked for; null when nothing.</param>
    /// <param name="rackFile">The path of the rack file.</param>
    /// <param name="io">Where its relays are.</param>
    /// <exception cref="CouldNotRunException">Nobody says where, and the user has no home.</exception>
    public static StateFolder OfDriver(string? asked, string rackFile, IoPlan io)
    {
        var isOfService = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(rackFile)) == ServiceFiles
            && Directory.Exists(ServiceState);
        return asked is null && isOfService && FromSystemd("STATE_DIRECTORY") is null
            ? Below(ServiceState, rackFile, io, isFast: false, ServiceLog, ServiceRun, isService: true)
            : Choose(asked, rackFile, io, isFast: false);
    }

    private static StateFolder Below(string root, string rackFile, IoPlan io, bool isFast, string? log, string? run, bool isService)
    {
        var name = System.IO.Path.GetFileNameWithoutExtension(rackFile);
        var below = io is SimulatedIo ? System.IO.Path.Combine("simulated", isFast ? name + "-fast" : name) : "";
        return new StateFolder(System.IO.Path.Combine(root, below), io is SimulatedIo ? null : log)
        {
            RunPath = run,
            NoticesPath = isService ? System.IO.Path.Combine(root + NoticesSuffix, below) : null,
        };
    }

    private static string OfUser()
    {
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
