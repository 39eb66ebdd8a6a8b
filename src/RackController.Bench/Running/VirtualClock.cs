using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>
/// The time of a run: true time, which only goes forward, and the two clocks of the controller's board, which are only
/// as good as the scenario lets them be. The monotonic clock of the board starts anew at every boot, so that nothing may
/// lean on it across a restart.
/// </summary>
/// <param name="start">The true time at which the run begins.</param>
internal sealed class VirtualClock(Instant start)
{
    private static readonly Duration BootTime = Duration.FromSeconds(12);
    private MonotonicTime bootedAt = MonotonicTime.Zero + -BootTime;
    private Duration wallError = Duration.Zero;
    private bool isTrusted = true;

    /// <summary>Time since the run began, as the simulated rack counts it.</summary>
    public MonotonicTime Bench { get; private set; }

    /// <summary>Time since the run began.</summary>
    public Duration Elapsed => Bench - MonotonicTime.Zero;

    /// <summary>The true time.</summary>
    public Instant True => start + Elapsed;

    /// <summary>What the controller sees.</summary>
    public Moment Moment => new(ToBoard(Bench), True + wallError, isTrusted);

    /// <summary>Goes forward.</summary>
    public void AdvanceTo(MonotonicTime time)
    {
        Invariant.Holds(time >= Bench, "time goes forward");
        Bench = time;
    }

    /// <summary>Moves the wall clock, as a person or a wrong time server would; its trust stays.</summary>
    public void Step(Duration by) => wallError += by;

    /// <summary>Sets the wall clock to something.</summary>
    public void Set(Instant wall) => wallError = wall - True;

    /// <summary>Sets the wall clock right.</summary>
    public void SetRight() => wallError = Duration.Zero;

    /// <summary>Says whether anything that knows the time vouches for the wall clock.</summary>
    public void Trust(bool trusted) => isTrusted = trusted;

    /// <summary>The board boots: its monotonic clock begins again.</summary>
    public void Boot() => bootedAt = Bench + -BootTime;

    /// <summary>What the board's monotonic clock reads at a time of the run.</summary>
    public MonotonicTime ToBoard(MonotonicTime bench) => new(bench.Nanoseconds - bootedAt.Nanoseconds);

    /// <summary>The time of the run at which the board's monotonic clock reads something; never stays never.</summary>
    public MonotonicTime FromBoard(MonotonicTime board) =>
        board == MonotonicTime.Never ? MonotonicTime.Never : bootedAt + (board - MonotonicTime.Zero);
}
