namespace RackController.Service;

/// <summary>The state folder, made if need be, and the lock in it. A folder that cannot be made or written keeps nobody from
/// driving a rack: it is a trouble to tell of. GPIO lines are exclusive by the kernel besides.</summary>
/// <param name="Lock">The lock; null when it cannot be had because of the disk.</param>
/// <param name="Trouble">Why not; null when it was had.</param>
internal sealed record FolderAndLock(RackLock? Lock, string? Trouble) : IDisposable
{
    /// <summary>Makes the folder and takes the lock.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="CouldNotRunException">Another process drives the rack.</exception>
    public static FolderAndLock Take(StateFolder folder)
    {
        try
        {
            Directory.CreateDirectory(folder.Path);
            return new FolderAndLock(RackLock.Take(folder.Lock), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new FolderAndLock(null, $"nothing keeps a second controller from driving this rack: {e.Message}");
        }
    }

    public void Dispose() => Lock?.Dispose();
}
