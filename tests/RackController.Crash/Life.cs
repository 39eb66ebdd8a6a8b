using System.Collections.Concurrent;
using System.Diagnostics;

namespace RackController.Crash;

/// <summary>One process that drives the racks, from its start to the kill.</summary>
internal sealed class Life : IDisposable
{
    private readonly Process process;
    private readonly Supervisor supervisor;
    private readonly string socketPath;
    private readonly ConcurrentQueue<string> lines = new();

    /// <summary>Starts the program.</summary>
    /// <param name="setting">What to start.</param>
    /// <param name="folder">Its state folder.</param>
    public Life(Setting setting, string folder)
    {
        socketPath = Path.Combine(setting.Work, $"notify-{Guid.NewGuid():N}");
        supervisor = new Supervisor(socketPath);
        var command = setting.Disk.StartOf(
            [setting.Program, "run", setting.RackFile, "--state", folder, "--speed", "60", "--log", "--page", "off"]);
        var start = new ProcessStartInfo(command[0], command[1..])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["NOTIFY_SOCKET"] = socketPath;
        setting.Clock.PutInto(start);
        process = Process.Start(start)!;
        process.OutputDataReceived += Take;
        process.ErrorDataReceived += Take;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>The process.</summary>
    public int Id => process.Id;

    /// <summary>Whether it ended although nobody killed it.</summary>
    public bool HasEnded => process.HasExited;

    /// <summary>What it said on its terminal.</summary>
    public IReadOnlyCollection<string> Lines => lines;

    /// <summary>How many events it vouched for.</summary>
    public long Acknowledged => supervisor.Acknowledged;

    /// <summary>Waits until it drives the racks.</summary>
    public bool WaitUntilReady() => supervisor.WaitUntilReady(Setting.Patience);

    /// <summary>Waits until it says something.</summary>
    public bool WaitUntilItSays(string words) =>
        SpinWait.SpinUntil(() => Says(words) || HasEnded, Setting.Patience) && Says(words);

    /// <summary>Whether it said something.</summary>
    public bool Says(string words) => lines.Any(line => line.Contains(words, StringComparison.Ordinal));

    /// <summary>Ends it in the midst of whatever it does, and hears what it said before.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
        supervisor.Dispose();
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            Kill();
        }

        process.Dispose();
        File.Delete(socketPath);
    }

    private void Take(object sender, DataReceivedEventArgs said)
    {
        if (said.Data is { } line)
        {
            lines.Enqueue(line);
        }
    }
}
