using System.Runtime.InteropServices;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using NodaTime;
using RackController.Control;
using RackController.Model;
using Serilog;

namespace RackController.Service;

/// <summary>
/// The one place where the running controller is put together. Read from top to bottom it is the order in which a rack comes
/// under control: alone, safe, remembered, scanned.
/// </summary>
public static class RackService
{
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(5);

    /// <summary>Drives a site until somebody asks for the end (SIGTERM, SIGINT, SIGQUIT, SIGHUP, SIGTSTP, so at Ctrl-C
    /// and at Ctrl-Z) or a defect forces it.
    /// However it ends, every load is put in its safe state first.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="options">How to run it.</param>
    /// <returns>How it ended.</returns>
    /// <exception cref="CouldNotRunException">It cannot be driven; nothing was switched.</exception>
    public static async Task<ServiceEnding> RunAsync(Site site, ServiceOptions options)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(options);

        // Alone: one process for one rack.
        using var rackLock = FolderAndLock.Take(options.Folder);
        using var serviceLog = ServiceLog.Open(options.Folder.Log, toConsole: options.Screen is null);
        var log = serviceLog.Log;
        using var supervisor = Supervisor.FromEnvironment();

        // Safe: the lines are claimed at their safe levels before anything slow is done.
        using var rack = OpenRack.Open(site);
        StartLines.WriteClaimed(log);

        // Remembered: what the last run knew, and no later than when.
        var opening = OpenJournal(options.Folder.Journal, supervisor);
        IWallTrust trust = site.Io is SimulatedIo ? new HostIsTrusted() : WallTrust.OfHost(opening.LastTrustedTime);
        using var clock = ClockFor(options, trust, opening.LastTrustedTime);
        var alarms = new ControllerAlarms(clock);
        using var journal = new Journal(options.Folder.Journal, opening, site, clock, alarms, options.FactsFor(site));

        // Scanned: everything that the scan thread touches, and whom it tells.
        var start = clock.Now();
        var control = new RackControl(site, start, opening.Memory);
        var (eventLog, recent, feed) = (new EventLog(log), new RecentEvents(), new EventFeed());
        var upkeep = new UpkeepWatch(site, options.Folder, clock, alarms);
        var (board, requests) = (new StatusBoard(alarms, recent, upkeep.Due), new RequestQueue());
        IScanListener[] listeners = [journal, eventLog, recent, feed];
        alarms.TellTo(listeners);
        var (recording, goodScans) = (new ScanRecording(new ScanRecorder(control, start, opening.Memory), journal), new GoodScans());
        var outlets = new ScanOutlets(requests, recording, listeners, board, [supervisor, rack, goodScans]);
        var loop = new ScanLoop(rack.Io, control, clock, outlets);
        using var housekeeper = new Housekeeper(
            log, eventLog, board, supervisor, trust, alarms, options.Folder, journal, goodScans, upkeep);
        rack.WakeOnEdge(clock.Wake);

        var parts = new RackParts(site, clock, board, journal, eventLog, housekeeper, supervisor, log);
        using var host = HostOf(log, lifetime => new RackWorker(parts, rack.Io, loop, lifetime));
        StartLines.Write(log, site, options, opening, rack);
        StartLines.RaiseWhatWasFound(alarms, opening, rackLock.Trouble);
        var worker = host.Services.GetRequiredService<RackWorker>();
        try
        {
            var running = new RunningRack(site, board, feed, requests, alarms, clock, worker, journal, log);
            var (faces, follower) = (new Faces(options, running, alarms, log), ScheduleFollower.Of(running, options, alarms));
            var screenDefect = await RunHostAsync(host, faces, follower, log).ConfigureAwait(false);
            return worker.Ending with { Defect = worker.Ending.Defect ?? screenDefect };
        }
        finally
        {
            // Whatever went wrong around it: the outputs are safe before the parts are taken down.
            worker.Stop();
        }
    }

    private static JournalOpening OpenJournal(string path, Supervisor supervisor)
    {
        using var slow = new SlowStart(supervisor, SlowStart.Every);
        return JournalOpening.Open(path, SystemClock.Instance.GetCurrentInstant());
    }

    private static IHost HostOf(ILogger log, Func<IHostApplicationLifetime, RackWorker> worker)
    {
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Services.AddSerilog(log);
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = StopWithin);
        builder.Services.Configure<ConsoleLifetimeOptions>(console => console.SuppressStatusMessages = true);
        builder.Services.AddSingleton(services => worker(services.GetRequiredService<IHostApplicationLifetime>()));
        builder.Services.AddHostedService(services => services.GetRequiredService<RackWorker>());
        return builder.Build();
    }

    /// <returns>What the screen failed of; null when it did not.</returns>
    private static async Task<string?> RunHostAsync(IHost host, Faces faces, ScheduleFollower follower, ILogger log)
    {
        var lifetime = host.Services.GetRequiredService<IHostApplicationLifetime>();

        // A closed terminal ends the process at once, pump running or not, and Ctrl-Z freezes it with the pump on, unless each is taken
        // for a request to end. Nobody watches over a rack that stands still.
        using var hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, End);
        using var freeze = OperatingSystem.IsWindows() ? null : PosixSignalRegistration.Create(PosixSignal.SIGTSTP, End);
        void End(PosixSignalContext signal)
        {
            signal.Cancel = true;
            lifetime.StopApplication();
        }

        try
        {
            await host.StartAsync().ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            log.Information("asked to end while starting");
        }

        var shown = faces.ShowAsync(lifetime);
        var followed = KeepFollowingAsync(follower, log, lifetime.ApplicationStopping);
        await host.WaitForShutdownAsync().ConfigureAwait(false);
        await followed.ConfigureAwait(false);
        return await shown.ConfigureAwait(false);
    }

    // Whatever is wrong with a book or a file, the rack is driven by what it had.
    private static async Task KeepFollowingAsync(ScheduleFollower follower, ILogger log, CancellationToken end)
    {
        try
        {
            await follower.FollowAsync(end).ConfigureAwait(false);
        }
        catch (Exception e)
        {
            log.Error(e, "schedules do not follow what stands on the tiers any more; the racks run by what they had");
        }
    }

    private static IScanClock ClockFor(ServiceOptions options, IWallTrust trust, Instant? last) => options.Speed > 1
        ? new FastClock(LaterOf(SystemClock.Instance.GetCurrentInstant(), last), options.Speed)
        : new HostClock(trust);

    private static Instant LaterOf(Instant now, Instant? last) => last is { } time ? Instant.Max(now, time) : now;
}
