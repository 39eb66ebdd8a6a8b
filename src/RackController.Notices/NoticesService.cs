using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Notices;

/// <summary>
/// The process that tells of alarms. It reads the journal and the controller's sign of life, and can switch nothing: the controller has no
/// network, and this has no rack. Where the rack file asks for no notices, it waits until it does.
/// </summary>
public sealed class NoticesService
{
    private static readonly TimeSpan StepEvery = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan EndWithin = TimeSpan.FromSeconds(1);
    private static readonly Duration LookAtFileEvery = Duration.FromSeconds(5);

    private readonly string rackFile;
    private readonly StateFolder folder;
    private readonly TextWriter log;
    private readonly SignOfLife own;
    private readonly SignOfLife controller;
    private readonly SystemClock clock = SystemClock.Instance;
    private Instant letGoDue;

    /// <summary>Makes one.</summary>
    /// <param name="rackFile">The path of the rack file.</param>
    /// <param name="folder">The folders of the controller.</param>
    /// <param name="log">Where its log goes, a line each.</param>
    public NoticesService(string rackFile, StateFolder folder, TextWriter log)
    {
        ArgumentNullException.ThrowIfNull(folder);
        this.rackFile = rackFile;
        this.folder = folder;
        this.log = log;
        own = SignOfLife.At(folder.NoticesAlive);
        controller = SignOfLife.At(folder.Alive);
    }

    /// <summary>Tells until the end is asked for. A rack file that changes is taken up within seconds; one that is not right changes
    /// nothing.</summary>
    /// <param name="site">What the rack file says.</param>
    /// <param name="end">Asks for the end.</param>
    /// <exception cref="CouldNotRunException">Another process tells of this site, or the folder cannot be used.</exception>
    public async Task RunAsync(Site site, CancellationToken end)
    {
        ArgumentNullException.ThrowIfNull(site);
        using var alone = TakeLock();
        letGoDue = clock.GetCurrentInstant() + UnusedMemory.Due.First;
        while (!end.IsCancellationRequested)
        {
            site = await RunWhileUnchangedAsync(site, end).ConfigureAwait(false);
        }

        Say("ended");
    }

    /// <summary>Sends a test message by every way at once, and one sign of life if the controller gives any, and says what came of
    /// each.</summary>
    /// <param name="site">What the rack file says.</param>
    /// <param name="folder">The folders of the controller.</param>
    /// <param name="end">Ends it.</param>
    public static async Task<ImmutableArray<WayTest>> TestAsync(Site site, StateFolder folder, CancellationToken end)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(folder);
        if (site.Notices is not { } plan)
        {
            return [];
        }

        using var ways = new Ways(plan, TimeProvider.System);
        var tests = ways.All.Select(way => NoticesTest.SendAsync(site, way, SystemClock.Instance.GetCurrentInstant(), end)).ToList();
        if (ways.Alive is { } alive)
        {
            tests.Add(NoticesTest.AskAsync(alive, SignOfLife.At(folder.Alive).IsFresh, end));
        }

        return [.. await Task.WhenAll(tests).ConfigureAwait(false)];
    }

    private async Task<Site> RunWhileUnchangedAsync(Site site, CancellationToken end)
    {
        var watched = new RackFileWatch(rackFile);
        using var ways = site.Notices is { } plan ? new Ways(plan, TimeProvider.System) : null;
        using var sending = CancellationTokenSource.CreateLinkedTokenSource(end);
        var run = ways is null ? null : new NoticesRun(site, PartsFor(ways));
        Say(ways is null
            ? $"{rackFile} asks for no notices: write `notices`, which is taken up at once"
            : $"telling of {site.Name} by {string.Join(", ", NamesOf(ways))}");
        Site? changed = null;
        var (signDue, lookDue) = (Instant.MinValue, clock.GetCurrentInstant());
        string? signFault = null;
        while (changed is null && !end.IsCancellationRequested)
        {
            var now = clock.GetCurrentInstant();
            if (now >= signDue || signDue - now > SignOfLife.Every)
            {
                signDue = now + SignOfLife.Every;
                signFault = SayOnce(own.Give(), signFault);
            }

            LetGoOfMemory(now);
            run?.Step(sending.Token);
            if (now >= lookDue || lookDue - now > LookAtFileEvery)
            {
                lookDue = now + LookAtFileEvery;
                changed = LookAtFile(watched);
            }

            await Task.WhenAny(Task.Delay(StepEvery, end)).ConfigureAwait(false);
        }

        await sending.CancelAsync().ConfigureAwait(false);
        await (run?.EndAsync(EndWithin) ?? Task.CompletedTask).ConfigureAwait(false);
        return changed ?? site;
    }

    private void LetGoOfMemory(Instant now)
    {
        if (now >= letGoDue || letGoDue - now > UnusedMemory.Due.Later)
        {
            letGoDue = now + UnusedMemory.Due.Later;
            if (UnusedMemory.LetGo() is { } fault)
            {
                Say(fault);
            }
        }
    }

    private Site? LookAtFile(RackFileWatch watched)
    {
        if (!watched.HasChanged())
        {
            return null;
        }

        var read = RackFileReader.Read(rackFile);
        if (read.Site is null)
        {
            Say($"{rackFile} is not right any more, so what it said before holds ({read.Complaints.FirstOrDefault()})");
        }

        return read.Site;
    }

    private NoticeParts PartsFor(Ways ways) => new(
        new NoticesFile(folder.Notices), new JournalFollower(folder.Journal), ways.All, ways.Alive, () => controller.IsFresh, clock, Say);

    private static IEnumerable<string> NamesOf(Ways ways) =>
        ways.All.Select(way => way.Name).Concat(ways.Alive is { } alive ? [alive.Status.Name] : []);

    private string? SayOnce(string? fault, string? before)
    {
        if (fault is not null && before is null)
        {
            Say($"the page cannot be told that this process is there: {fault}");
        }

        return fault;
    }

    private FileStream TakeLock()
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(folder.NoticesLock)!);
            return new FileStream(folder.NoticesLock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e) when (File.Exists(folder.NoticesLock))
        {
            throw new CouldNotRunException(
                $"{folder.NoticesLock}: another process tells of this site already: stop that one first (systemctl stop "
                + "rackcontroller-notices); --test works beside it", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CouldNotRunException(
                $"{folder.NoticesLock} cannot be made ({e.Message.TrimEnd('.')}): run this as the account of the service, or name a folder "
                + "with --state", e);
        }
    }

    // systemd puts the time before each line; on a terminal it is missed.
    private void Say(string line)
    {
        var time = Environment.GetEnvironmentVariable("JOURNAL_STREAM") is null
            ? DateTime.Now.ToString("HH:mm:ss ", CultureInfo.InvariantCulture)
            : "";
        log.WriteLine(time + line);
    }
}
