using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;

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
    [InlineData("QUIT", Scanning)]
    [InlineData("TSTP", Scanning)]
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

    // A supervisor takes STOPPING=1 at its word: systemd kills whoever is still there a while later, in the middle of a flood if need be.
    [Fact]
    public async Task GoingOverToAnotherRackFileItDoesNotTellItsSupervisorThatItStops()
    {
        using var told = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified) { ReceiveTimeout = 30_000 };
        var address = Path.Combine(state.FullName, "notify");
        told.Bind(new UnixDomainSocketEndPoint(address));
        var file = Path.Combine(state.FullName, "rack.yaml");
        File.Copy(Path.Combine(AppContext.BaseDirectory, "config", "demo-four-tier.yaml"), file);
        var page = FreePort();
        using var service = Launch(
            start => start.Environment["NOTIFY_SOCKET"] = address, "run", file, "--state", state.FullName, "--page", $"{page}");
        service.OutputDataReceived += (_, _) => { };
        service.BeginOutputReadLine();
        Assert.Equal("READY=1", Assignments(told).First(IsState));

        using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{page}/") };
        await UntilServedAsync(client);
        var changed = await File.ReadAllTextAsync(file) + "# changed\n";
        using (var draft = await client.PostAsJsonAsync("api/rack-file/draft", new { text = changed }))
        {
            draft.EnsureSuccessStatusCode();
        }

        while (!(await client.GetStringAsync("api/rack-file/draft")).Contains("\"asItIs\"", StringComparison.Ordinal))
        {
            await Task.Delay(100);
        }

        using var applied = await client.PostAsJsonAsync("api/rack-file/apply", new { });
        Assert.Equal(HttpStatusCode.Accepted, applied.StatusCode);
        Assert.Equal("READY=1", Assignments(told).First(IsState));

        await SignalAsync(service, "TERM");
        Assert.Equal("STOPPING=1", Assignments(told).First(IsState));
        await service.WaitForExitAsync();
        Assert.Equal(0, service.ExitCode);
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

    private Process Launch() => Launch(
        _ => { }, "run", Path.Combine(AppContext.BaseDirectory, "config", "demo-four-tier.yaml"), "--state", state.FullName,
        "--speed", "20", "--page", "off");

    private static Process Launch(Action<ProcessStartInfo> prepare, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(CommandLine).Assembly.Location, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        prepare(start);
        return Process.Start(start)!;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    // The rack is driven before its page is there.
    private static async Task UntilServedAsync(HttpClient client)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (true)
        {
            try
            {
                await client.GetStringAsync("health/ready", patience.Token);
                return;
            }
            catch (HttpRequestException)
            {
                await Task.Delay(100, patience.Token);
            }
        }
    }

    private static IEnumerable<string> Assignments(Socket told)
    {
        var datagram = new byte[4096];
        while (true)
        {
            yield return Encoding.UTF8.GetString(datagram, 0, told.Receive(datagram));
        }
    }

    private static bool IsState(string assignment) => assignment is "READY=1" or "STOPPING=1";

    private static async Task SignalAsync(Process process, string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", $"{process.Id}"]);
        await kill.WaitForExitAsync();
    }
}
