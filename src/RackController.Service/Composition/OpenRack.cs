using RackController.Hardware;
using RackController.Model;
using RackController.Plant;

namespace RackController.Service;

/// <summary>The rack behind its port, simulated or on GPIO lines: the only place that knows which.</summary>
internal sealed class OpenRack : IWatchdog, IDisposable
{
    private readonly GpioRackIo? gpio;

    private OpenRack(IRackIo io, string name)
    {
        Io = io;
        Name = name;
        gpio = io as GpioRackIo;
    }

    /// <summary>The port.</summary>
    public IRackIo Io { get; }

    /// <summary>What it is, for people.</summary>
    public string Name { get; }

    /// <summary>Opens what the site's plan names. Lines of a board are claimed at their safe levels.</summary>
    /// <param name="site">The site.</param>
    /// <exception cref="CouldNotRunException">A chip or line cannot be had.</exception>
    public static OpenRack Open(Site site)
    {
        try
        {
            return site.Io is GpioIo
                ? new OpenRack(GpioRackIo.Open(site, HostClock.MonotonicNow), "GPIO lines")
                : new OpenRack(new SimulatedSite(site, PlantStart.Default with { At = HostClock.MonotonicNow() }), "simulated");
        }
        catch (IOException e)
        {
            throw new CouldNotRunException(string.Join("; ", FaultsLeft(site).Prepend(e.Message).Distinct()), e);
        }
    }

    // What an earlier process left on must not stay on because a part that has nothing to do with it is missing.
    private static IReadOnlyList<string> FaultsLeft(Site site)
    {
        try
        {
            return SafeChips.Drive(site, HostClock.MonotonicNow);
        }
        catch (IOException e)
        {
            return [e.Message];
        }
    }

    /// <summary>How each relay and contact is wired, line by line.</summary>
    public IEnumerable<string> Describe() => gpio?.Describe() ?? [];

    /// <summary>Has the edges of contacts call for a scan at once.</summary>
    /// <param name="wake">Called by the thread that fetches edges, with no other thread between it and the scan: under load each would
    /// have to wait for its turn. Neither waits nor throws.</param>
    public void WakeOnEdge(Action wake)
    {
        if (gpio is not null)
        {
            gpio.InputChanged = wake;
        }
    }

    /// <summary>The heartbeat of a board goes on.</summary>
    public void GoodScan(MonotonicTime now) => gpio?.Beat(now);

    public void Dispose() => gpio?.Dispose();
}
