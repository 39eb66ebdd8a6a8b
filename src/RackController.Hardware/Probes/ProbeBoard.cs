using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>The sensors of a site that measure a value: each bus has a thread of its own, and the scan takes over what was said
/// last.</summary>
/// <param name="buses">The buses.</param>
internal sealed class ProbeBoard(ProbeBus[] buses) : IDisposable
{
    private readonly ProbeSlot[] slots = [.. buses.SelectMany(bus => bus.Slots)];

    /// <summary>Begins to read.</summary>
    /// <param name="site">The site.</param>
    /// <param name="probes">How each sensor is read.</param>
    /// <param name="ports">Opens what they are on.</param>
    /// <param name="clock">The clock that the scan lives by, for any thread.</param>
    public static ProbeBoard Begin(Site site, IEnumerable<Probe> probes, ProbePorts ports, Func<MonotonicTime> clock)
    {
        var readers = new ProbeReaders(site, ports, clock);
        return new ProbeBoard([
            .. probes.GroupBy(ProbeReaders.BusOf).Select(bus => new ProbeBus(bus.Key, [.. bus.Select(OnBus)], clock)),
        ]);

        ProbeOnBus OnBus(Probe probe) => new(
            site[probe.Sensor].Name, ProbeReaders.WiringOf(probe), readers.Of(probe), new ProbeSlot(probe.Sensor));
    }

    /// <summary>Gives the scan what every sensor said last.</summary>
    public void CopyTo(Readings readings)
    {
        foreach (var slot in slots)
        {
            slot.CopyTo(readings);
        }
    }

    /// <summary>One line about every sensor, for the log.</summary>
    public IEnumerable<string> Describe() => buses.SelectMany(bus => bus.Describe());

    /// <inheritdoc/>
    public void Dispose() => Array.ForEach(buses, bus => bus.Dispose());
}
