using RackController.Model;

namespace RackController.Hardware;

/// <summary>Finds the lines that a rack file names, before any of them is taken: what is called by a name gets its offset, and no two uses
/// share a line, however each calls it.</summary>
public static class LineSearch
{
    /// <summary>Every line of a plan with what it is used for.</summary>
    /// <param name="site">The site.</param>
    /// <param name="plan">Its lines.</param>
    public static IEnumerable<(string Use, GpioLine Line)> Uses(Site site, GpioIo plan)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(plan);
        return
        [
            .. plan.Relays.Select(relay => (site[relay.Load].Name, relay.Line)),
            .. plan.Contactors.Select(contactor => ($"contactor of {site[contactor.Circuit].Name}", contactor.Line)),
            .. plan.Contacts.Select(contact => (site[contact.Sensor].Name, contact.Line)),
            .. plan.Probes.OfType<PulseProbe>().Select(pulse => (site[pulse.Sensor].Name, pulse.Line)),
            .. plan.Heartbeat is { } line ? [("heartbeat", line)] : Array.Empty<(string, GpioLine)>(),
        ];
    }

    /// <summary>The site with every line by its offset.</summary>
    /// <param name="site">A site whose I/O is on GPIO lines.</param>
    /// <param name="look">Looks at a chip; throws <see cref="IOException"/> where it cannot be had.</param>
    /// <exception cref="GpioUnavailableException">A line is not there, is not the only one of its name, or is used twice.</exception>
    internal static Site Found(Site site, Func<string, ChipSight> look)
    {
        var plan = PlanOf(site);
        var parts = plan.Expanders.Select(part => part.Name).ToHashSet();
        var chips = Uses(site, plan).Select(use => use.Line.Chip).Where(chip => !parts.Contains(chip)).Distinct()
            .ToDictionary(chip => chip, look);
        var taken = new LinesTaken();
        foreach (var (use, line) in Uses(site, plan).Where(use => chips.ContainsKey(use.Line.Chip)))
        {
            taken.Take(use, chips[line.Chip], Find(line));
        }

        return site with
        {
            Io = plan with
            {
                Relays = [.. plan.Relays.Select(relay => relay with { Line = Find(relay.Line) })],
                Contactors = [.. plan.Contactors.Select(contactor => contactor with { Line = Find(contactor.Line) })],
                Contacts = [.. plan.Contacts.Select(contact => contact with { Line = Find(contact.Line) })],
                Probes = [.. plan.Probes.Select(probe => probe is PulseProbe pulse ? pulse with { Line = Find(pulse.Line) } : probe)],
                Heartbeat = plan.Heartbeat is { } heartbeat ? Find(heartbeat) : null,
            },
        };

        GpioLine Find(GpioLine line) => chips.TryGetValue(line.Chip, out var chip) ? chip.Find(line) : line;
    }

    /// <summary>The lines of a site.</summary>
    /// <exception cref="ArgumentException">It is on no board.</exception>
    internal static GpioIo PlanOf(Site site) =>
        site.Io as GpioIo ?? throw new ArgumentException("The I/O of this site is not on GPIO lines.", nameof(site));
}
