using Microsoft.Data.Sqlite;

namespace RackController.Service;

/// <summary>Looks at the kernel, the library that comes with the program, the wall clock and the disk.</summary>
/// <param name="folder">The state folder.</param>
internal sealed class HostCheckup(StateFolder folder)
{
    // The first with the interface that the driver speaks (linux/gpio.h, version 2).
    private static readonly Version firstKernel = new(5, 10);

    private const string DiskSubject = "state folder";

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

    /// <summary>Where the journal goes, or will go once a controller has made its folder.</summary>
    /// <param name="isDriven">Whether a controller uses the folder now.</param>
    public Finding Disk(out bool isDriven)
    {
        isDriven = false;
        try
        {
            var nearest = NearestThatIs(folder.Path);

            // Nothing is made here: a lock that belongs to whoever asks would keep the controller's own account out.
            var isUsed = File.Exists(folder.Lock);
            if (!isUsed && LibC.Access(nearest, LibC.MayWriteAndSearch) != 0)
            {
                return Finding.Wrong(
                    DiskSubject,
                    $"{folder.Path} cannot be written by {Environment.UserName}: ask as the controller's account, give it the folder, "
                    + "or name another with --state");
            }

            isDriven = isUsed && IsHeld();
            var use = isDriven ? "in use by a controller, which is left in peace" : isUsed ? "driven by nobody now" : "not in use yet";
            var disk = new DriveInfo(nearest);
            return JudgeDisk(folder.Path, use, disk.DriveFormat, disk.AvailableFreeSpace);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Finding.Wrong(
                DiskSubject,
                $"{folder.Path} cannot be used: {e.Message.TrimEnd('.')}: ask as the controller's account, or name another with --state");
        }
    }

    /// <summary>Whether what is written to a disk is still there after a power cut, and has room.</summary>
    /// <param name="path">The state folder.</param>
    /// <param name="use">Who uses it, in words.</param>
    /// <param name="format">Its file system, as the kernel calls it.</param>
    /// <param name="freeBytes">The room left, bytes.</param>
    internal static Finding JudgeDisk(string path, string use, string format, long freeBytes) => format switch
    {
        "tmpfs" or "ramfs" or "rootfs" => Finding.Wrong(
            DiskSubject, $"{path} is in memory, and gone after a power cut: name one on a disk with --state"),
        _ when freeBytes < Housekeeper.LeastFreeBytes => Finding.Wrong(
            DiskSubject, $"{path} has {freeBytes / 1_000_000} MB left: make room"),

        // Boards that spare their card lay one in memory over the whole system. One on a disk looks the same from here.
        "overlay" or "overlayfs" => Finding.Doubtful(
            DiskSubject,
            $"{path} is on an overlay: if its upper layer is in memory, journal and rack file are gone after a power cut; switch the "
            + "overlay off, or mount a disk at that folder"),
        _ => Finding.Sound(DiskSubject, $"{path} on {format}, {freeBytes / 1_000_000} MB left, {use}"),
    };

    private bool IsHeld()
    {
        try
        {
            RackLock.Take(folder.Lock).Dispose();
            return false;
        }
        catch (CouldNotRunException)
        {
            return true;
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
