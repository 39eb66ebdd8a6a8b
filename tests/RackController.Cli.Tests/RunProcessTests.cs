using System.Diagnostics;

namespace RackController.Cli.Tests;

/// <summary>The program as its supervisor sees it: started, told to end, killed, started twice.</summary>
public sealed class RunProcessTests : IDisposable
{
    private const string JustStarted = ": started";
    private const string Scanning = ": known";

    private readonly DirectoryInfo state = Directory.CreateTempSubdirectory("rackcontroller-test-");

    [Theory]
    [InlineData("TERM", Scanning)]
    [InlineData("INT", Scanning)]
    [InlineData("HUP", Scanning)]
    [InlineData("TERM", JustStarted)]
    public async Task ToldToEndItLeavesEveryLoadInItsSafeStateAndExitsWith0(string signal, string after)
    {
        using var service = await StartAsync(after);

        await SignalAsync(service, signal);
        var rest = await service.StandardOutput.ReadToEndAsync();
        await service.WaitForExitAsync();

        Assert.Contains("Every load is in its safe state.", rest, StringComparison.Ordinal);
        Assert.Equal(0, service.ExitCode);
    }

    [Fact]
    public async Task ASecondProcessIsRefusedWithOneLineAndExitCode3()
    {
        using var first = await StartAsync();
        using var second = Launch();

        var complaint = await second.StandardError.ReadToEndAsync();
        await second.WaitForExitAsync();

        Assert.Equal(3, second.ExitCode);
        Assert.Contains($"process {first.Id} already drives this rack", complaint, StringComparison.Ordinal);
        Assert.Single(complaint.Trim().Split('\n'));
        await SignalAsync(first, "TERM");
        await first.WaitForExitAsync();
    }

    [Fact]
    public async Task KilledWithoutWarningItsMemoryIsTakenUpByTheNext()
    {
        using (var killed = await StartAsync())
        {
            killed.Kill();
            await killed.WaitForExitAsync();
        }

        using var next = await StartAsync();
        await SignalAsync(next, "TERM");
        await next.WaitForExitAsync();

        var log = string.Concat(Directory.GetFiles(Path.Combine(state.FullName, "log")).Select(File.ReadAllText));
        Assert.Contains("interlock memory of", log, StringComparison.Ordinal);
    }

    public void Dispose() => state.Delete(recursive: true);

    /// <summary>Starts the service on the simulated demo rack and waits until its log says something.</summary>
    private async Task<Process> StartAsync(string until = Scanning)
    {
        var service = Launch();
        string? line;
        do
        {
            line = await service.StandardOutput.ReadLineAsync();
            Assert.NotNull(line);
        }
        while (!line.Contains(until, StringComparison.Ordinal));
        return service;
    }

    private Process Launch() => Process.Start(
        new ProcessStartInfo(
            "dotnet",
            [typeof(CommandLine).Assembly.Location, "run", Path.Combine(AppContext.BaseDirectory, "config", "demo-four-tier.yaml"),
                "--state", state.FullName, "--speed", "20", "--page", "off"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        })!;

    private static async Task SignalAsync(Process process, string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", $"{process.Id}"]);
        await kill.WaitForExitAsync();
    }
}
