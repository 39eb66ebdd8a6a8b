using RackController.Model;

namespace RackController.Service;

/// <summary>Remembers that there was a good scan, for whoever asks on another thread.</summary>
internal sealed class GoodScans : IWatchdog
{
    private int any;

    /// <inheritdoc/>
    public void GoodScan(MonotonicTime now) => Volatile.Write(ref any, 1);

    /// <summary>Whether there was one since this was asked last.</summary>
    public bool TakeAny() => Interlocked.Exchange(ref any, 0) != 0;
}
