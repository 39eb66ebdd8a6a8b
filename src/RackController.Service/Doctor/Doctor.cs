using RackController.Hardware;
using RackController.Model;

namespace RackController.Service;

/// <summary>Looks at everything that a controller needs of its board and its host, and says what is missing and what to do about it.
/// It drives nothing, and asks no bus that a running controller asks.</summary>
public static class Doctor
{
    /// <summary>Looks at this board.</summary>
    /// <param name="site">The site that it is to drive.</param>
    /// <param name="folder">The state folder of its controller.</param>
    public static IEnumerable<Finding> Look(Site site, StateFolder folder) =>
        Look(site, folder, new Board(HostClock.MonotonicNow), new Machine("/"));

    internal static IEnumerable<Finding> Look(Site site, StateFolder folder, IBoard board, Machine machine)
    {
        ArgumentNullException.ThrowIfNull(site);
        foreach (var finding in HostCheckup.Programs())
        {
            yield return finding;
        }

        yield return new HostCheckup(folder).Disk(out var isDriven);
        if (site.Io is not GpioIo plan)
        {
            yield return Finding.Sound("rack", "simulated: it needs no board, and no clock that is right");
            yield break;
        }

        yield return HostCheckup.Clock();
        foreach (var finding in new WatchdogCheckup(machine).Look())
        {
            yield return finding;
        }

        if (isDriven)
        {
            yield return Finding.Sound("lines and sensors", "in use by that controller: stop it to have them looked at, or ask it");
            yield break;
        }

        var checkup = new BoardCheckup(site, plan, board, machine);
        foreach (var finding in checkup.Lines().Concat(checkup.Parts()))
        {
            yield return finding;
        }
    }
}
