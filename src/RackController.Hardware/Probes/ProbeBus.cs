using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>
/// A thread that reads the sensors of one bus, one after the other, for ever. A bus that hangs or is dead keeps this thread, and nobody
/// else: its readings grow old, and what is too old is unknown. One that fails is asked again at the next round.
/// </summary>
internal sealed class ProbeBus : IDisposable
{
    // Half of what is asked of a sensor that is to be fresh within seconds, and long enough that no bus is busy without end.
    private static readonly TimeSpan every = TimeSpan.FromSeconds(1);

    // Longer than any sound round; whoever hangs longer is left behind, and ends with the process.
    private static readonly TimeSpan endsWithin = TimeSpan.FromSeconds(1);

    private readonly string name;
    private readonly ProbeOnBus[] probes;
    private readonly Func<MonotonicTime> clock;
    private readonly ManualResetEventSlim ending = new();
    private readonly Thread thread;

    /// <summary>Begins to read.</summary>
    /// <param name="name">The bus, for people.</param>
    /// <param name="probes">What hangs on it.</param>
    /// <param name="clock">The clock that the scan lives by.</param>
    public ProbeBus(string name, ProbeOnBus[] probes, Func<MonotonicTime> clock)
    {
        this.name = name;
        this.probes = probes;
        this.clock = clock;
        thread = new Thread(ReadForEver) { IsBackground = true, Name = $"sensors of {name}" };
        thread.Start();
    }

    /// <summary>What the scan takes over.</summary>
    public IEnumerable<ProbeSlot> Slots => probes.Select(probe => probe.Slot);

    /// <summary>What is on it, a line each, for the log.</summary>
    public IEnumerable<string> Describe() => probes.Select(probe => $"{probe.Name}: {probe.Wiring}, on {name}");

    /// <inheritdoc/>
    public void Dispose()
    {
        ending.Set();
        if (thread.Join(endsWithin))
        {
            ending.Dispose();
        }
    }

    private void ReadForEver()
    {
        do
        {
            foreach (var probe in probes)
            {
                if (!ending.IsSet)
                {
                    probe.ReadInto(clock);
                }
            }
        }
        while (!ending.Wait(every));
    }
}

/// <summary>One sensor of a bus.</summary>
/// <param name="Name">The sensor's name.</param>
/// <param name="Wiring">Where it is, for people.</param>
/// <param name="Reader">Who reads it.</param>
/// <param name="Slot">Where its readings go.</param>
internal sealed record ProbeOnBus(string Name, string Wiring, IProbeReader Reader, ProbeSlot Slot)
{
    /// <summary>Reads it once. A reading is as old as the question: what a slow bus says late was measured before.</summary>
    public void ReadInto(Func<MonotonicTime> clock)
    {
        var asked = clock();
        try
        {
            Slot.Put(new Reading(Reader.Read(), ReadingQuality.Good, asked));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // What is wrong with it is told by the row that misses its reading.
            Slot.Put(new Reading(0, ReadingQuality.Corrupt, asked));
        }
    }
}
