using RackController.Hardware;
using RackController.Model;

namespace RackController.Service;

/// <summary>Looks at every chip, line, bus and sensor that a rack file names. Drives nothing.</summary>
/// <param name="site">The site.</param>
/// <param name="plan">Its lines and parts.</param>
/// <param name="board">The board.</param>
/// <param name="machine">Its files.</param>
internal sealed class BoardCheckup(Site site, GpioIo plan, IBoard board, Machine machine)
{
    /// <summary>Chips, and the lines on them.</summary>
    public IEnumerable<Finding> Lines()
    {
        var expanders = plan.Expanders.Select(part => part.Name).ToHashSet();
        var taken = new LinesTaken();
        foreach (var chip in LineSearch.Uses(site, plan).Where(use => !expanders.Contains(use.Line.Chip)).GroupBy(use => use.Line.Chip))
        {
            ChipSight? seen = null;
            yield return Chip(chip.Key, () => seen = board.Chip(chip.Key));
            foreach (var (use, line) in chip)
            {
                if (seen is not null)
                {
                    yield return Line(use, line, seen, taken);
                }
            }
        }

        // Found to be so with one of the usual pin drivers (of Debian 6.12, in emulation).
        if (machine.Line("sys/module/pinctrl_bcm2835/parameters/persist_gpio_outputs") == "Y")
        {
            yield return Finding.Doubtful(
                "released lines",
                "keep their level when the controller dies: fit a watchdog relay on a heartbeat line, or boot with "
                + "pinctrl_bcm2835.persist_gpio_outputs=0");
        }
    }

    /// <summary>Buses, the parts on them, and what every sensor says.</summary>
    public IEnumerable<Finding> Parts()
    {
        var troubled = new HashSet<int>();
        var parts = plan.Expanders.Concat(plan.Probes.Select(probe => probe.Carrier).OfType<BusPart>());
        foreach (var bus in parts.Select(part => part.Bus).Distinct())
        {
            var found = Bus(bus);
            yield return found;
            if (found.Weight == FindingWeight.Wrong)
            {
                troubled.Add(bus);
            }
        }

        foreach (var part in plan.Expanders.Where(part => !troubled.Contains(part.Bus)))
        {
            yield return Try($"{part.Kind} '{part.Name}'", () =>
            {
                board.AskExpander(part);
                return $"answers at 0x{part.Address:x2} of bus {part.Bus}";
            });
        }

        foreach (var probe in plan.Probes.Where(probe => probe.Carrier is not { } part || !troubled.Contains(part.Bus)))
        {
            yield return Measured(probe);
        }
    }

    private Finding Measured(Probe probe)
    {
        var sensor = site[probe.Sensor];
        try
        {
            var value = board.Ask(site, probe);
            var says = $"says {ReadingWords.Value(sensor.Kind, value, site.Units)}";
            return value >= sensor.PlausibleMin && value <= sensor.PlausibleMax
                ? Finding.Sound(sensor.Name, says)
                : Finding.Wrong(sensor.Name, $"{says}, which cannot be true: look at its wiring and its points in the rack file");
        }
        catch (IOException silence)
        {
            return Finding.Wrong(sensor.Name, $"{silence.Message.TrimEnd('.')}: look at its wiring and its place in the rack file");
        }
    }

    private Finding Bus(int bus)
    {
        var (subject, device) = ($"I2C bus {bus}", $"dev/i2c-{bus}");
        return !machine.Has(device)
            ? Finding.Wrong(subject, $"/{device} is not there: enable the bus in the board's firmware settings, and load i2c-dev at boot")
            : machine.MayUse(device)
            ? Finding.Sound(subject, $"/{device} may be used")
            : Finding.Wrong(subject, $"permission to open /{device} is denied: run as an account in the group that owns it, often 'i2c'");
    }

    private static Finding Chip(string name, Func<ChipSight> look)
    {
        var subject = $"chip '{name}'";
        try
        {
            var chip = look();
            return !name.StartsWith(GpioLine.NumberedChip, StringComparison.Ordinal)
                ? Finding.Sound(subject, $"{chip.Path}, {chip.LineNames.Length} lines")
                : Finding.Doubtful(
                    subject,
                    $"'{chip.Label}', {chip.LineNames.Length} lines: the number may be another chip's after the next boot or update; write "
                    + $"`chip: {chip.Label}` unless another chip here has that label too");
        }
        catch (IOException trouble)
        {
            return Finding.Wrong(subject, trouble.Message);
        }
    }

    private Finding Line(string use, GpioLine line, ChipSight chip, LinesTaken taken) =>
        Try($"{use}, line {line.Which} of '{line.Chip}'", () =>
        {
            var found = chip.Find(line);
            taken.Take(use, chip, found);
            var kernelName = chip.LineNames[found.Offset];
            return board.HolderOf(found) is { } holder
                ? throw new IOException($"held by '{holder}': stop that one, or name another line in the rack file")
                : line.Name is not null ? $"free, at offset {found.Offset}"
                : kernelName.Length > 0 ? $"free, named '{kernelName}'"
                : "free";
        });

    private static Finding Try(string subject, Func<string> look)
    {
        try
        {
            return Finding.Sound(subject, look());
        }
        catch (IOException trouble)
        {
            return Finding.Wrong(subject, trouble.Message);
        }
    }
}
