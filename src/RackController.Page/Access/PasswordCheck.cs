namespace RackController.Page;

/// <summary>Checks passwords one at a time, on a thread that has the processor only when nobody else wants it: whoever guesses cannot
/// take it from the scan.</summary>
internal sealed class PasswordCheck : IDisposable
{
    private const int MostWaiting = 8;

    // What nobody's password is checked by: an unknown name takes as long as a wrong password. It is made by the first check of either, so
    // that a start neither takes its time nor loads a library of cryptography.
    private readonly Lazy<PasswordHash> nobody = new(() => PasswordHash.Of(Secret.New()));
    private readonly SemaphoreSlim one = new(1);
    private int waiting;

    /// <summary>Whether so many wait already that another would wait for long.</summary>
    public bool IsBusy => Volatile.Read(ref waiting) >= MostWaiting;

    /// <summary>Whether a password is somebody's.</summary>
    /// <param name="person">Whose; null for an unknown name.</param>
    /// <param name="password">The password.</param>
    /// <param name="cancellation">Ends the wait for a turn.</param>
    public Task<bool> FitsAsync(Person? person, string password, CancellationToken cancellation) =>
        RunAsync(
            () =>
            {
                var standIn = nobody.Value;
                return (person?.Password ?? standIn).Fits(password) && person is not null;
            },
            cancellation);

    /// <summary>Hashes a new password.</summary>
    /// <param name="password">The password.</param>
    /// <param name="cancellation">Ends the wait for a turn.</param>
    public Task<PasswordHash> HashAsync(string password, CancellationToken cancellation) =>
        RunAsync(() => PasswordHash.Of(password), cancellation);

    public void Dispose() => one.Dispose();

    private async Task<T> RunAsync<T>(Func<T> work, CancellationToken cancellation)
    {
        Interlocked.Increment(ref waiting);
        try
        {
            await one.WaitAsync(cancellation).ConfigureAwait(false);
            try
            {
                return await OnQuietThread(work).ConfigureAwait(false);
            }
            finally
            {
                one.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref waiting);
        }
    }

    private static Task<T> OnQuietThread<T>(Func<T> work)
    {
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        new Thread(() =>
        {
            QuietThread.Begin();
            try
            {
                done.SetResult(work());
            }
            catch (Exception e)
            {
                done.SetException(e);
            }
        })
        { IsBackground = true, Name = "password" }.Start();
        return done.Task;
    }
}
