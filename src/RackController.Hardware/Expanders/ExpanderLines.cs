using System.Diagnostics;
using NodaTime;
using RackController.Model;

namespace RackController.Hardware.Expanders;

/// <summary>
/// What the lines of a part on a bus should be and what they are. A thread of its own speaks to the part, so that a bus that hangs keeps
/// nobody else: the scan leaves what it wants and takes over what was last read back. The part keeps its levels when all this has ended.
/// </summary>
/// <param name="name">The part, for people.</param>
/// <param name="open">Opens it; throws <see cref="IOException"/> where it cannot.</param>
/// <param name="clock">The clock that the scan lives by, for any thread.</param>
internal sealed class ExpanderLines(string name, Func<ExpanderPort> open, Func<MonotonicTime> clock) : IDisposable
{
    /// <summary>How long a part may take to do what it is told: some exchanges on the bus, and one that is repeated.</summary>
    public static readonly Duration Patience = Duration.FromMilliseconds(300);

    private static readonly TimeSpan every = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan step = TimeSpan.FromMilliseconds(10);
    private static readonly TimeSpan endsWithin = TimeSpan.FromSeconds(1);

    private readonly Lock changing = new();
    private readonly AutoResetEvent changed = new(initialState: false);
    private readonly AutoResetEvent spoken = new(initialState: false);
    private ExpanderPort? port;
    private Thread? thread;
    private volatile bool ending;
    private (int Levels, int Outputs, int Version) wanted;
    private (int Levels, int Version) seen;
    private MonotonicTime wantedAt;
    private MonotonicTime seenAt;
    private string? fault;

    /// <summary>Takes a line as an output, at its level from the first instant. Whoever takes the first line waits for the part, and
    /// nobody afterwards.</summary>
    /// <exception cref="IOException">The part does not answer.</exception>
    public void Claim(int line, bool isHigh)
    {
        lock (changing)
        {
            Want(line, isHigh);
            wanted.Outputs |= 1 << line;
            if (thread is null)
            {
                Exchange(wanted.Levels, wanted.Outputs, wanted.Version);
                thread = new Thread(SpeakForEver) { IsBackground = true, Name = $"relays of {name}" };
                thread.Start();
            }
        }

        changed.Set();
    }

    /// <summary>Wants a level on a line.</summary>
    public void Write(int line, bool isHigh)
    {
        lock (changing)
        {
            Want(line, isHigh);
        }

        changed.Set();
    }

    /// <summary>The level on a line: as read back since it was wanted, or as it is wanted while the part may still be at it.</summary>
    /// <exception cref="IOException">The part has not answered for too long.</exception>
    public bool IsHigh(int line)
    {
        lock (changing)
        {
            var isFresh = seen.Version == wanted.Version;
            return clock() > (isFresh ? seenAt : wantedAt) + Patience
                ? throw new IOException(fault ?? $"{name} has not answered for {Patience.TotalMilliseconds:0} ms")
                : (((isFresh ? seen.Levels : wanted.Levels) >> line) & 1) != 0;
        }
    }

    /// <summary>Waits until what is wanted was seen on the part. Not for a running scan.</summary>
    /// <param name="atMost">How long to wait.</param>
    /// <returns>Why it was not seen; null when it was, or when no line was taken.</returns>
    public string? Settle(TimeSpan atMost)
    {
        var since = Stopwatch.GetTimestamp();
        while (true)
        {
            lock (changing)
            {
                if (thread is null || seen.Version == wanted.Version)
                {
                    return null;
                }

                if (Stopwatch.GetElapsedTime(since) >= atMost)
                {
                    return fault ?? $"{name} has not answered for {Patience.TotalMilliseconds:0} ms";
                }
            }

            changed.Set();
            spoken.WaitOne(step);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        ending = true;
        changed.Set();
        if (thread?.Join(endsWithin) != false)
        {
            port?.Dispose();
            changed.Dispose();
            spoken.Dispose();
        }
    }

    private void Want(int line, bool isHigh)
    {
        var levels = isHigh ? wanted.Levels | (1 << line) : wanted.Levels & ~(1 << line);
        if (levels != wanted.Levels)
        {
            wanted = (levels, wanted.Outputs, wanted.Version + 1);
            wantedAt = clock();
        }
    }

    private void SpeakForEver()
    {
        while (!ending)
        {
            changed.WaitOne(every);
            Speak();
            spoken.Set();
        }

        // What was wanted last, such as the safe levels before an end.
        Speak();
    }

    private void Speak()
    {
        int levels, outputs, version;
        lock (changing)
        {
            (levels, outputs, version) = wanted;
        }

        try
        {
            Exchange(levels, outputs, version);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            port?.Dispose();
            port = null;
            lock (changing)
            {
                fault = $"{name}: {failure.Message}";
            }
        }
    }

    private void Exchange(int levels, int outputs, int version)
    {
        var asked = clock();
        port ??= open();
        port.Drive(levels, outputs);
        var read = port.Read();
        lock (changing)
        {
            (seen, seenAt, fault) = ((read, version), asked, null);
        }
    }
}
