using Microsoft.Data.Sqlite;

namespace RackController.Service;

/// <summary>Looks at the kernel, the library that comes with the program, the wall clock and the disk.</summary>
/// <param name="folder">The state folder.</param>
internal sealed class HostCheckup(StateFolder folder)
{
    // The first with the interface that the driver speaks (linux/gpio.h, version 2).
    private static readonly Version firstKernel = new(5, 10);

    /// <summary>The kernel, and the library of the journal.</summary>
    public static IEnumerable<Finding> Programs()
    {
        var kernel = Environment.OSVersion.Version;
        yield return kernel >= firstKernel
            ? Finding.Sound("kernel", $"{kernel}")
            : Finding.Wrong("kernel", $"{kernel} has no GPIO interface of version 2: update to {firstKernel} or later");
        yield return Library();
    }

    /// <summary>Whether the wall clock may be believed, also after a power cut.</summary>
    public static Finding Clock()
    {
        const string Subject = "wall clock";
        var fromBattery = WallTrust.SetFromBatteryClock();
        return !WallTrust.IsDisciplined() && !fromBattery
            ? Finding.Wrong(
                Subject,
                "nothing vouches for it, so floods keep their spacing and no hour is believed: enable systemd-timesyncd or chrony and "
                + "give the board a network, or fit a clock with a battery")
            : fromBattery
            ? Finding.Sound(Subject, "set from a clock with a battery")
            : Finding.Doubtful(
                Subject,
                "right by network time alone: after a power cut without a network no hour is believed; fit a clock with a battery");
    }

    /// <summary>Where the journal goes.</summary>
    /// <param name="isDriven">Whether a controller uses the folder now.</param>
    public Finding Disk(out bool isDriven)
    {
        const string Subject = "state folder";
        isDriven = false;
        try
        {
            // Nothing is made here: a lock that belongs to whoever asks would keep the controller's own account out.
            if (!File.Exists(folder.Lock))
            {
                return LibC.Access(NearestThatIs(folder.Path), LibC.MayWriteAndSearch) == 0
                    ? Finding.Sound(Subject, $"{folder.Path} is not in use yet")
                    : Finding.Wrong(
                        Subject,
                        $"{folder.Path} cannot be written by {Environment.UserName}: ask as the controller's account, give it the folder, "
                        + "or name another with --state");
            }

            using var taken = RackLock.Take(folder.Lock);
            var disk = new DriveInfo(folder.Path);
            return disk.DriveFormat is "tmpfs" or "ramfs"
                ? Finding.Wrong(Subject, $"{folder.Path} is in memory, and gone after a power cut: name one on a disk with --state")
                : disk.AvailableFreeSpace < Housekeeper.LeastFreeBytes
                ? Finding.Wrong(Subject, $"{folder.Path} has {disk.AvailableFreeSpace / 1_000_000} MB left: make room")
                : Finding.Sound(Subject, $"{folder.Path} on {disk.DriveFormat}, {disk.AvailableFreeSpace / 1_000_000} MB left");
        }
        catch (CouldNotRunException)
        {
            isDriven = true;
            return Finding.Sound(Subject, $"{folder.Path} is in use by a controller, which is left in peace");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Finding.Wrong(
                Subject,
                $"{folder.Path} cannot be used: {e.Message.TrimEnd('.')}: ask as the controller's account, or name another with --state");
        }
    }

    // What is not there yet would be made in the nearest folder above that is; a file in its way is no folder, and cannot be searched.
    private static string NearestThatIs(string path)
    {
        var at = Path.GetFullPath(path);
        while (!Path.Exists(at) && Path.GetDirectoryName(at) is { } above)
        {
            at = above;
        }

        return at.TrimEnd('/') + "/";
    }

    private static Finding Library()
    {
        try
        {
            using var database = new SqliteConnection("Data Source=:memory:");
            database.Open();
            return Finding.Sound("journal library", $"SQLite {database.ServerVersion}");
        }
        catch (Exception e) when (e is DllNotFoundException or TypeInitializationException or SqliteException)
        {
            return Finding.Wrong(
                "journal library", "libe_sqlite3.so does not load: install the program anew, with the files that came beside it");
        }
    }
}
