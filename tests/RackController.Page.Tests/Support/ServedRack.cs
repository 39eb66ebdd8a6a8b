using RackController.Model;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>A simulated rack that is driven, with its page on a port of its own, for the length of a test.</summary>
internal sealed class ServedRack : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly DirectoryInfo folder;
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task<ServiceEnding> run;
    private readonly PageServer server;

    private ServedRack(DirectoryInfo folder, IServedRack rack, PageServer server, Task<ServiceEnding> run, TaskCompletionSource ended)
    {
        this.folder = folder;
        this.run = run;
        this.ended = ended;
        Rack = rack;
        this.server = server;
        Client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = Address };
    }

    /// <summary>The rack behind the page.</summary>
    public IServedRack Rack { get; }

    /// <summary>Where the page is.</summary>
    public Uri Address => server.Address!;

    /// <summary>Where people, sessions and the certificate are kept.</summary>
    public StateFolder State => new(folder.FullName);

    /// <summary>The rack file that the page shows and may change.</summary>
    public string RackFile => Path.Combine(folder.FullName, "rack.yaml");

    /// <summary>Where its earlier versions are kept.</summary>
    public string Versions => Path.Combine(folder.FullName, "rack-file-versions");

    /// <summary>Somebody who asks without a browser, and follows nobody elsewhere.</summary>
    public HttpClient Client { get; }

    /// <summary>Starts a rack of a shipped file.</summary>
    /// <param name="file">Its name in <c>config</c>.</param>
    /// <param name="speed">How many times faster than real time.</param>
    /// <param name="prepare">Prepares the state folder before the start.</param>
    /// <param name="howServed">Changes how the page is served.</param>
    public static Task<ServedRack> OfFileAsync(
        string file = "demo-four-tier.yaml", double speed = 1, Action<StateFolder>? prepare = null,
        Func<PageOptions, PageOptions>? howServed = null)
    {
        var path = ShippedFiles.PathTo($"config/{file}");
        var site = RackFileReader.Read(path).Site ?? throw new InvalidOperationException($"{path} is not right");
        return StartAsync(site, path, speed, prepare, howServed);
    }

    /// <summary>Starts a rack.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rackFile">The file that the page shows; a copy of it is what it may change.</param>
    /// <param name="speed">How many times faster than real time.</param>
    /// <param name="prepare">Prepares the state folder before the start.</param>
    /// <param name="howServed">Changes how the page is served.</param>
    /// <param name="runsBy">What the rack file said when the run began; null for what it says.</param>
    public static async Task<ServedRack> StartAsync(
        Site site, string rackFile, double speed = 1, Action<StateFolder>? prepare = null,
        Func<PageOptions, PageOptions>? howServed = null, string? runsBy = null)
    {
        var folder = Directory.CreateTempSubdirectory("rackcontroller-page-");
        var state = new StateFolder(folder.FullName);
        var copy = Path.Combine(folder.FullName, "rack.yaml");
        File.Copy(rackFile, copy);
        prepare?.Invoke(state);
        var options = new PageOptions(new System.Net.IPEndPoint(System.Net.IPAddress.Loopback, 0), copy, state, speed);
        var server = new PageServer(howServed?.Invoke(options) ?? options);
        var ended = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var served = new TaskCompletionSource<IServedRack>(TaskCreationOptions.RunContinuationsAsynchronously);
        var run = RackService.RunAsync(site, new ServiceOptions
        {
            RackFile = copy,
            RackFileText = runsBy ?? File.ReadAllText(copy),
            Folder = state,
            Speed = speed,
            Screen = (_, end) => ended.Task.WaitAsync(end),
            Page = (rack, isServed, end) =>
            {
                return server.ServeAsync(
                    rack,
                    () =>
                    {
                        isServed();
                        served.TrySetResult(rack);
                    },
                    end);
            },
        });
        await Task.WhenAny(served.Task, run).WaitAsync(Patience);
        if (run.IsCompleted)
        {
            await run;
        }

        return new ServedRack(folder, await served.Task, server, run, ended);
    }

    /// <summary>Waits until a picture is as expected.</summary>
    public async Task<SiteStatus> SeeAsync(Func<SiteStatus, bool> isAsExpected)
    {
        using var patience = new CancellationTokenSource(Patience);
        while (true)
        {
            var status = await Rack.LookAsync(patience.Token);
            if (isAsExpected(status))
            {
                return status;
            }
        }
    }

    /// <summary>How the run ended, once it has by itself.</summary>
    public Task<ServiceEnding> EndedAsync() => run.WaitAsync(Patience);

    /// <summary>Ends the service, as a power cut of its page: the rack is left safe.</summary>
    public async Task EndAsync()
    {
        ended.TrySetResult();
        await run.WaitAsync(Patience);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await EndAsync();
        folder.Delete(recursive: true);
    }
}
