using System.Diagnostics;

namespace RackController.Service.Tests;

/// <summary>A file system in memory that is soon full. Only root may mount one.</summary>
internal sealed class TinyDisk : IDisposable
{
    public TinyDisk(string below, int kibibytes)
    {
        Path = Directory.CreateDirectory(System.IO.Path.Combine(below, "disk")).FullName;
        Assert.Equal(0, Run("mount", "-t", "tmpfs", "-o", $"size={kibibytes}k", "tmpfs", Path));
    }

    public string Path { get; }

    /// <summary>Whether this process may mount one.</summary>
    public static bool IsAllowed()
    {
        if (Environment.UserName != "root")
        {
            return false;
        }

        using var folder = new TemporaryFolder();
        var mounted = Run("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", folder.Path) == 0;
        return mounted && Run("umount", folder.Path) == 0;
    }

    /// <summary>Fills what is left.</summary>
    /// <returns>The file that takes the room.</returns>
    public string Fill()
    {
        var ballast = System.IO.Path.Combine(Path, "ballast");
        using var file = File.Create(ballast, bufferSize: 1);
        var block = new byte[4096];
        try
        {
            while (true)
            {
                file.Write(block);
            }
        }
        catch (IOException)
        {
            return ballast;
        }
    }

    public void Dispose() => Run("umount", "--lazy", Path);

    private static int Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        process.WaitForExit();
        return process.ExitCode;
    }
}

/// <summary>A test that needs a disk that can be filled.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FullDiskFactAttribute : FactAttribute
{
    public FullDiskFactAttribute() =>
        Skip = TinyDisk.IsAllowed() ? null : "mounting a tiny file system needs root and a kernel that allows it";
}
