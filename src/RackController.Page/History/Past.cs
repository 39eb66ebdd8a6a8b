using RackController.Service;

namespace RackController.Page;

/// <summary>Reads the past out of the journal for whoever asks: one at a time, and only when the processor has nothing else to
/// do.</summary>
/// <param name="journal">The journal's file.</param>
internal sealed class Past(string journal)
{
    // Of the whole process, which has one processor to share.
    private static readonly SemaphoreSlim turn = new(1);

    /// <summary>Reads.</summary>
    /// <param name="read">What to read; nothing of the journal may be kept beyond it.</param>
    /// <param name="cancellation">Ends the wait.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public async Task<T> ReadAsync<T>(Func<JournalHistory, T> read, CancellationToken cancellation)
    {
        await turn.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            var found = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
            new Thread(() => Read(read, found)) { Name = "history", IsBackground = true }.Start();
            return await found.Task.ConfigureAwait(false);
        }
        finally
        {
            turn.Release();
        }
    }

    private void Read<T>(Func<JournalHistory, T> read, TaskCompletionSource<T> found)
    {
        QuietThread.Begin();
        try
        {
            using var history = JournalHistory.Open(journal);
            found.SetResult(read(history));
        }
        catch (Exception e)
        {
            // Whoever asked hears of it; this thread is theirs.
            found.SetException(e);
        }
    }
}
