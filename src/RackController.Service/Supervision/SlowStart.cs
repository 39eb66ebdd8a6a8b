namespace RackController.Service;

/// <summary>
/// Asks the supervisor for time while something slow is done before the first scan, such as looking through hundreds of megabytes of
/// journal on a card: it would take the process for hung, and start it again without end. It asks for five minutes at most.
/// </summary>
internal sealed class SlowStart : IDisposable
{
    /// <summary>How often it asks; whoever needs less never does.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromSeconds(1);

    private readonly Supervisor supervisor;
    private readonly Timer timer;
    private int left;

    /// <summary>Begins.</summary>
    /// <param name="supervisor">Whom it asks.</param>
    /// <param name="every">How often; <see cref="Every"/>, but for tests.</param>
    /// <param name="atMost">How many times at most: with that period, five minutes.</param>
    public SlowStart(Supervisor supervisor, TimeSpan every, int atMost = 300)
    {
        this.supervisor = supervisor;
        left = atMost;
        timer = new Timer(_ => Ask(), null, every, every);
    }

    /// <summary>The slow part is done.</summary>
    public void Dispose() => timer.Dispose();

    private void Ask()
    {
        if (Interlocked.Decrement(ref left) >= 0)
        {
            supervisor.AskForTime();
        }
    }
}
