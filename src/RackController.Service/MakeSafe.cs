using RackController.Hardware;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// What is left to do when the process that drove a rack is gone without having been asked: claim its lines and drive every
/// load to its safe state, whatever else of the rack does not answer. A supervisor calls it after every end.
/// </summary>
public static class MakeSafe
{
    /// <summary>Drives every load of a site to its safe state and lets the lines go.</summary>
    /// <param name="site">The site.</param>
    /// <returns>What failed; null when every relay took its safe state, or when there is no board.</returns>
    /// <exception cref="CouldNotRunException">Another process drives the rack.</exception>
    public static string? Run(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        if (site.Io is not GpioIo)
        {
            return null;
        }

        try
        {
            return SafeChips.Drive(site, HostClock.MonotonicNow) is { Count: > 0 } faults ? string.Join("; ", faults) : null;
        }
        catch (IOException e)
        {
            throw new CouldNotRunException(e.Message, e);
        }
    }
}
