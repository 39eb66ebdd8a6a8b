using RackController.Hardware.CharacterDevice;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>
/// Puts relays at rest where nobody drives them any more. Each chip by itself, and nothing but its outputs: a chip that does not come back,
/// or one that only has contacts on it, is no reason to leave on what an earlier process switched on elsewhere.
/// </summary>
public static class SafeChips
{
    /// <summary>Drives every relay and contactor that answers to its safe level, reads it back and lets it go.</summary>
    /// <param name="site">A site whose I/O is on GPIO lines.</param>
    /// <param name="clock">A monotonic clock, for any thread.</param>
    /// <returns>What failed, chip by chip; none where every relay followed.</returns>
    /// <exception cref="GpioUnavailableException">Another process holds a line of the board, so that it drives the rack.</exception>
    public static IReadOnlyList<string> Drive(Site site, Func<MonotonicTime> clock)
    {
        ArgumentNullException.ThrowIfNull(site);
        return Drive(site, alone => GpioRackIo.OpenLines(alone, clock));
    }

    internal static IReadOnlyList<string> Drive(Site site, Func<Site, GpioRackIo> open)
    {
        var plan = LineSearch.PlanOf(site);
        var parts = plan.Expanders.Select(part => part.Name).ToHashSet();

        // The board's own lines first: only they tell that somebody else drives the rack, and then nothing is touched.
        var chips = plan.Relays.Select(relay => relay.Line.Chip).Concat(plan.Contactors.Select(contactor => contactor.Line.Chip))
            .Distinct(StringComparer.Ordinal).OrderBy(parts.Contains);
        List<string> faults = [];
        foreach (var chip in chips)
        {
            try
            {
                using var rack = open(OnlyOutputsOf(chip, site, plan));
                if (rack.MakeSafe().Fault is { } fault)
                {
                    faults.Add(fault);
                }
            }
            catch (IOException failure) when (failure.InnerException?.HResult != LibC.Busy)
            {
                faults.Add(failure.Message);
            }
        }

        return faults;
    }

    private static Site OnlyOutputsOf(string chip, Site site, GpioIo plan) => site with
    {
        Io = plan with
        {
            Relays = [.. plan.Relays.Where(relay => relay.Line.Chip == chip)],
            Contactors = [.. plan.Contactors.Where(contactor => contactor.Line.Chip == chip)],
            Contacts = [],
            Probes = [],
            Heartbeat = null,
        },
    };
}
