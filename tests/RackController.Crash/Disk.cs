using System.Diagnostics;
using System.Globalization;

namespace RackController.Crash;

/// <summary>The disk of the state folder, which can be made full.</summary>
internal abstract class Disk
{
    /// <summary>Whether nothing fits on it now.</summary>
    public bool IsFull { get; private set; }

    /// <summary>The program and its arguments that start a process on this disk.</summary>
    /// <param name="command">The process.</param>
    public virtual string[] StartOf(string[] command) => command;

    /// <summary>Leaves no room.</summary>
    /// <param name="life">The process that is to find none.</param>
    public void Fill(Life life)
    {
        IsFull = true;
        DoFill(life);
    }

    /// <summary>Makes room again.</summary>
    /// <param name="life">The process that is to find it.</param>
    public void Free(Life life)
    {
        IsFull = false;
        DoFree(life);
    }

    protected abstract void DoFill(Life life);

    protected abstract void DoFree(Life life);
}

/// <summary>A small file system of its own: a file takes all the room.</summary>
/// <param name="folder">Where it is mounted.</param>
internal sealed class MountedDisk(string folder) : Disk
{
    private readonly string ballast = Path.Combine(folder, "ballast");

    protected override void DoFill(Life life)
    {
        using var file = File.Create(ballast, bufferSize: 1);
        var block = new byte[4096];
        while (TryWrite(file, block))
        {
        }
    }

    private static bool TryWrite(FileStream file, byte[] block)
    {
        try
        {
            file.Write(block);
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }

    protected override void DoFree(Life life) => File.Delete(ballast);
}

/// <summary>Where nothing may be mounted: the process may not make any file longer than a page. It gets the error of a full disk for a
/// signal that is ignored, as if the limit were the disk's.</summary>
internal sealed class LimitedFiles : Disk
{
    public override string[] StartOf(string[] command) => ["/bin/sh", "-c", "trap '' XFSZ; exec \"$@\"", "sh", .. command];

    protected override void DoFill(Life life) => Limit(life, "4096");

    protected override void DoFree(Life life) => Limit(life, "unlimited");

    private static void Limit(Life life, string bytes)
    {
        using var prlimit = Process.Start(
            "prlimit", ["--pid", life.Id.ToString(CultureInfo.InvariantCulture), $"--fsize={bytes}:unlimited"]);
        prlimit.WaitForExit();
    }
}
