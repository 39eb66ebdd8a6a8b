using RackController.Model;

namespace RackController.Service;

/// <summary>
/// The one thread that touches the rack. However it ends, asked or by a defect, the last thing it writes is the safe state
/// of every load.
/// </summary>
internal sealed class ScanThread
{
    private readonly IRackIo io;
    private readonly IScanClock clock;
    private readonly ScanLoop loop;
    private readonly RelayCommands safe;
    private readonly Action<ScanEnding> ended;
    private readonly Thread thread;
    private volatile bool stopping;

    /// <summary>Prepares the thread.</summary>
    /// <param name="site">The site.</param>
    /// <param name="io">The rack.</param>
    /// <param name="clock">The clock it sleeps by.</param>
    /// <param name="loop">What it does at each scan.</param>
    /// <param name="ended">Told once, on this thread, how it ended, after the safe state was written.</param>
    public ScanThread(Site site, IRackIo io, IScanClock clock, ScanLoop loop, Action<ScanEnding> ended)
    {
        this.io = io;
        this.clock = clock;
        this.loop = loop;
        this.ended = ended;
        safe = new RelayCommands(site);
        thread = new Thread(Run) { Name = "scan", IsBackground = true };
    }

    /// <summary>Begins to scan.</summary>
    public void Start() => thread.Start();

    /// <summary>Asks the thread to write the safe state and end, and waits for it.</summary>
    /// <param name="patience">How long to wait.</param>
    /// <returns>Whether it ended in time.</returns>
    public bool Stop(TimeSpan patience)
    {
        stopping = true;
        clock.Wake();
        return !thread.IsAlive || thread.Join(patience);
    }

    private void Run()
    {
        Exception? defect = null;
        try
        {
            while (!stopping)
            {
                loop.ScanOnce();
                clock.SleepUntil(loop.NextDue);
            }
        }
        catch (Exception e)
        {
            defect = e;
        }

        ended(new ScanEnding(defect, WriteSafeState()));
    }

    /// <summary>Writes the safe state, twice if the first time fails.</summary>
    /// <returns>What failed, in words; null when every load took its safe state.</returns>
    private string? WriteSafeState() => TryWriteSafeState() is null ? null : TryWriteSafeState();

    private string? TryWriteSafeState()
    {
        try
        {
            // The time only says when to try again what failed; a clock that fails must not keep the rack from its safe state.
            return io.WriteLast(loop.NextDue, safe).Fault;
        }
        catch (Exception e)
        {
            return e.Message;
        }
    }
}

/// <summary>How the scan thread ended.</summary>
/// <param name="Defect">The defect of the program that ended it; null when it was asked to end.</param>
/// <param name="SafeStateFault">Why a load may not be in its safe state; null when all are.</param>
internal sealed record ScanEnding(Exception? Defect, string? SafeStateFault);
