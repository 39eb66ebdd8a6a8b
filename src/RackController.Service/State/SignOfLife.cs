using System.Globalization;
using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// A file in which one process says that it is well, and from which others read how long ago it did. The time is that of the monotonic
/// clock, which all processes of a machine share and nobody sets. Under systemd the file lies in memory, so that it costs no card.
/// </summary>
/// <param name="path">The file.</param>
/// <param name="now">The monotonic clock of the machine.</param>
public sealed class SignOfLife(string path, Func<MonotonicTime> now)
{
    /// <summary>How often a sign is due.</summary>
    public static readonly Duration Every = Duration.FromSeconds(10);

    /// <summary>After this long without one a process is not well, or not there.</summary>
    public static readonly Duration GoodFor = Duration.FromSeconds(45);

    /// <summary>One by the clock of this machine.</summary>
    /// <param name="path">The file.</param>
    public static SignOfLife At(string path) => new(path, HostClock.MonotonicNow);

    /// <summary>How long ago the last sign was given; null where there is none that can be read, or it is from before the machine
    /// started.</summary>
    public Duration? Age
    {
        get
        {
            try
            {
                return long.TryParse(File.ReadAllText(path), NumberStyles.None, CultureInfo.InvariantCulture, out var given)
                    && given <= now().Nanoseconds
                    ? now() - new MonotonicTime(given)
                    : null;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return null;
            }
        }
    }

    /// <summary>Whether a sign was given a short while ago.</summary>
    public bool IsFresh => Age is { } age && age <= GoodFor;

    /// <summary>Gives one. The folder has to be there.</summary>
    /// <returns>Why it could not be given; null when it was.</returns>
    public string? Give()
    {
        try
        {
            File.WriteAllText(path + ".new", now().Nanoseconds.ToString(CultureInfo.InvariantCulture));
            File.Move(path + ".new", path, overwrite: true);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return e.Message;
        }
    }
}
