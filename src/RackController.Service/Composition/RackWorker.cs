using Microsoft.Extensions.Hosting;
using RackController.Control;
using RackController.Model;
using Serilog;

namespace RackController.Service;

/// <summary>
/// Starts and stops what runs, in the order that keeps the rack safe: outputs first of all at the end, the record after them,
/// and the whole within five seconds.
/// </summary>
internal sealed class RackWorker : IHostedService
{
    private static readonly TimeSpan FirstScanPatience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan ScanPatience = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan JournalPatience = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan HousekeepingPatience = TimeSpan.FromSeconds(0.5);

    private readonly Site site;
    private readonly TellingTime time;
    private readonly ScanThread scan;
    private readonly StatusBoard board;
    private readonly Journal journal;
    private readonly EventLog eventLog;
    private readonly Housekeeper housekeeper;
    private readonly Supervisor supervisor;
    private readonly ILogger log;
    private readonly IHostApplicationLifetime lifetime;
    private readonly TaskCompletionSource<ScanEnding> scanEnded = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private string? startAgain;
    private int stopped;

    public RackWorker(RackParts parts, IRackIo io, ScanLoop loop, IHostApplicationLifetime lifetime)
    {
        site = parts.Site;
        time = new TellingTime(parts.Clock);
        board = parts.Board;
        journal = parts.Journal;
        eventLog = parts.EventLog;
        housekeeper = parts.Housekeeper;
        supervisor = parts.Supervisor;
        log = parts.Log;
        this.lifetime = lifetime;
        scan = new ScanThread(site, io, parts.Clock, loop, OnScanEnded);
    }

    /// <summary>How the run ended; to be asked once it has.</summary>
    public ServiceEnding Ending => scanEnded.Task.IsCompletedSuccessfully
        ? new ServiceEnding(scanEnded.Task.Result.Defect?.Message, scanEnded.Task.Result.SafeStateFault, startAgain is not null)
        : new ServiceEnding("the scan did not end in time", "the scan did not end in time");

    async Task IHostedService.StartAsync(CancellationToken cancellationToken)
    {
        journal.Start();
        housekeeper.Start();
        Tell("started", "the controller was asked to run");
        var firstPicture = board.Ask();
        scan.Start();

        // Told to end while it waits, it still has to end as always: so this never throws.
        await Task.WhenAny(firstPicture, scanEnded.Task, Task.Delay(FirstScanPatience, cancellationToken)).ConfigureAwait(false);
        if (firstPicture.IsCompletedSuccessfully)
        {
            supervisor.Ready();
        }
    }

    Task IHostedService.StopAsync(CancellationToken cancellationToken)
    {
        Stop();
        return Task.CompletedTask;
    }

    /// <summary>Outputs safe, then the record, then the log. Doing it again changes nothing.</summary>
    public void Stop()
    {
        if (Interlocked.Exchange(ref stopped, 1) != 0)
        {
            return;
        }

        // Whoever says that it stops is killed if it does not: a supervisor takes it at its word.
        if (startAgain is null)
        {
            supervisor.Stopping();
        }

        if (!scan.Stop(ScanPatience))
        {
            log.Fatal("the scan does not end; outputs keep what they were last told until the process is gone");
        }

        Tell("stopped", Ending.Defect is { } defect ? $"of a defect: {defect}" : startAgain ?? "the controller was asked to end");
        if (!journal.Stop(JournalPatience))
        {
            log.Error("the journal could not be written to its end");
        }

        if (!housekeeper.Stop(HousekeepingPatience))
        {
            log.Error("the log could not be written to its end");
        }
    }

    /// <summary>Ends, for another run to take over.</summary>
    /// <param name="because">Why.</param>
    public void StartAgain(string because)
    {
        startAgain = because;
        lifetime.StopApplication();
    }

    /// <summary>On the scan thread, after it wrote the safe state.</summary>
    private void OnScanEnded(ScanEnding ending)
    {
        if (ending.SafeStateFault is { } fault)
        {
            log.Fatal("a load may not be in its safe state: {Fault:l}", fault);
        }

        if (ending.Defect is { } defect)
        {
            log.Fatal(defect, "the scan met a defect of the program and ended");
            Tell(ending.SafeStateFault is null ? "safe state" : "safe state in doubt", $"of a defect: {defect.Message}");
        }

        scanEnded.TrySetResult(ending);
        lifetime.StopApplication();
    }

    /// <summary>Puts on record and into the log what happened to the controller itself.</summary>
    /// <param name="what">What happened.</param>
    /// <param name="because">Why.</param>
    public void Tell(string what, string because)
    {
        ControlEvent[] events = [new(time.Now(), EventKind.Controller, site.Name, what, because)];
        foreach (IScanListener listener in (IScanListener[])[journal, eventLog])
        {
            listener.Happened(events, null);
            listener.GoOn();
        }
    }
}

/// <summary>The parts that run beside the scan.</summary>
internal sealed record RackParts(
    Site Site, IScanClock Clock, StatusBoard Board, Journal Journal, EventLog EventLog, Housekeeper Housekeeper,
    Supervisor Supervisor, ILogger Log);
