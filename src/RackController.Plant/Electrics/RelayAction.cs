using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// The moving part of one relay between its command and its contact. A sound one follows at once; a sluggish one follows late; one
/// that chatters lets go now and then while its coil should hold it, as it does at too little voltage. What it does hangs on the times at
/// which commands and faults change, never on who looks.
/// </summary>
/// <param name="stream">Which of the run's streams of random numbers is its own.</param>
/// <param name="seed">The seed of the run.</param>
/// <param name="faults">What is wrong with it.</param>
internal sealed class RelayAction(int stream, ulong seed, LoadFaults faults)
{
    private bool told;
    private MonotonicTime toldAt;
    private bool follows;

    /// <summary>When its contact could next change by itself; <see cref="MonotonicTime.Never"/> while it cannot.</summary>
    public MonotonicTime Due { get; private set; } = MonotonicTime.Never;

    /// <summary>Whether its contact is closed.</summary>
    /// <param name="on">What it is told now.</param>
    /// <param name="now">The time now.</param>
    public bool IsClosed(bool on, MonotonicTime now)
    {
        if (on != told)
        {
            told = on;
            toldAt = now;
        }

        if (now >= toldAt + faults.RelayLate)
        {
            follows = told;
        }

        Due = follows == told ? MonotonicTime.Never : toldAt + faults.RelayLate;
        if (!follows || faults.RelayChatters == Duration.Zero)
        {
            return follows;
        }

        var stretchNs = faults.RelayChatters.ToInt64Nanoseconds() / 2;
        var stretch = now.Nanoseconds / stretchNs;
        Due = MonotonicTime.Earlier(Due, new MonotonicTime((stretch + 1) * stretchNs));
        return (SeededScatter.Bits(seed, stream, stretch) & 1) == 1;
    }
}
