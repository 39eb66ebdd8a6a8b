using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>A walk on a board or a simulated rack: alone, with every load in its safe state but the one that is tried, and put on
/// record.</summary>
public static class WiringSession
{
    private static readonly Duration ScanEvery = Duration.FromMilliseconds(100);

    /// <summary>Walks until the person is through, or ends it, or somebody asks for the end.</summary>
    /// <param name="site">The site.</param>
    /// <param name="folder">Its state folder.</param>
    /// <param name="who">Who walks, for the record.</param>
    /// <param name="person">Takes a page to show, and gives the key that was pressed since, in upper case; null for none. It never waits,
    /// because a load may be on meanwhile.</param>
    /// <param name="end">Asks for the end.</param>
    /// <returns>What came of every item.</returns>
    /// <exception cref="CouldNotRunException">Another process drives the rack, a line cannot be had, or there is no record.</exception>
    public static IReadOnlyList<WiringResult> Walk(
        Site site, StateFolder folder, string who, Func<WiringPage, char?> person, CancellationToken end)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(person);
        using var alone = FolderAndLock.Take(folder);
        var opening = JournalOpening.Open(folder.Journal, SystemClock.Instance.GetCurrentInstant());
        using var journal = opening.File
            ?? throw new CouldNotRunException(
                $"{opening.Unusable}: a walk is for the record: make it writable, or name another with --state");
        using var rack = OpenRack.Open(site);
        using var clock = new HostClock(site.Io is SimulatedIo ? new HostIsTrusted() : WallTrust.OfHost(opening.LastTrustedTime));
        return Walk(site, rack.Io, rack, clock, person, Record, end);

        void Record(WiringResult result) =>
            journal.WriteLasting([new JournalEntry([Event(clock, who, result)], null)], [], journal.Run);
    }

    internal static IReadOnlyList<WiringResult> Walk(
        Site site, IRackIo io, IWatchdog watchdog, IScanClock clock, Func<WiringPage, char?> person, Action<WiringResult> record,
        CancellationToken end)
    {
        var walk = new WiringWalk(site);
        var readings = new Readings(site);
        var commands = new RelayCommands(site);
        try
        {
            for (char? key = null; !walk.IsOver && !end.IsCancellationRequested;)
            {
                var now = clock.Now().Monotonic;
                Must(io.Read(now, readings));
                if (walk.Scan(now, readings, key) is { } result)
                {
                    record(result);
                }

                walk.Tell(commands);
                Must(io.Write(now, commands));
                watchdog.GoodScan(now);
                key = walk.IsOver ? null : person(walk.Page(now, readings));
                clock.SleepUntil(now + ScanEvery);
            }
        }
        finally
        {
            // However it ends: nothing that was tried stays on.
            Must(io.Write(clock.Now().Monotonic, new RelayCommands(site)));
        }

        return walk.Results;
    }

    private static ControlEvent Event(HostClock clock, string who, WiringResult result) => new(
        clock.Now(), EventKind.Request, result.Name, result.Outcome == WiringOutcome.Right ? "wired as written" : "not wired as written",
        $"{who} walked through the wiring: {result.Text}");

    private static void Must(IoOutcome outcome)
    {
        if (outcome.Fault is { } fault)
        {
            throw new CouldNotRunException($"{fault}: a load may not be in its safe state: cut the supply by hand");
        }
    }
}
