using System.Device.Gpio;
using System.Device.I2c;
using RackController.Hardware.CharacterDevice;
using RackController.Hardware.Probes;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>
/// The relays and contacts of a site on the GPIO lines of a board. From the first instant to the last every relay line it
/// holds is driven, beginning and ending with the safe state of its load; what a line does once it is let go, after a stop
/// or a kill, is up to the board and its wiring. Sensors that measure a value are read beside the scan, which takes over what they
/// last said.
/// </summary>
/// <remarks>Called from one thread. Levels are polled by every <see cref="Read"/>; edges only call <see cref="InputChanged"/>,
/// so that a scan need not wait for its turn.</remarks>
public sealed class GpioRackIo : IRackIo, IDisposable
{
    private readonly GpioBank[] banks;
    private ProbeBoard probes = new([]);
    private readonly Heartbeat? heartbeat;
    private ChipOpener? chips;
    private readonly RelayCommands safe;
    private MonotonicTime lastSeen;

    /// <summary>Takes every line of a site: all relays first, each at the level of its load's safe state, then the contacts.</summary>
    /// <param name="site">A site whose I/O is on GPIO lines.</param>
    /// <param name="openChip">Gives the driver of the chip with a label, its pins numbered by offset. Its calls throw
    /// <see cref="IOException"/> when they fail.</param>
    /// <exception cref="IOException">A chip or a line cannot be had. Nothing stays claimed.</exception>
    public GpioRackIo(Site site, Func<string, GpioDriver> openChip)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(openChip);
        safe = new RelayCommands(site);
        banks = BanksOf(site, openChip);
        try
        {
            Array.ForEach(banks, bank => bank.ClaimRelays());
            Array.ForEach(banks, bank => bank.ClaimContacts());
            heartbeat = LineSearch.PlanOf(site).Heartbeat is { } line ? new Heartbeat(line, openChip) : null;
        }
        catch
        {
            Release();
            throw;
        }
    }

    /// <summary>Takes every line of a site, through the kernel's GPIO character device or on parts of its I2C buses, and leaves its other
    /// sensors alone.</summary>
    /// <param name="site">A site whose I/O is on GPIO lines.</param>
    /// <param name="clock">The clock that the scan lives by, for any thread.</param>
    /// <exception cref="IOException">A chip or a line cannot be had; the message says which, why and what to do.</exception>
    public static GpioRackIo OpenLines(Site site, Func<MonotonicTime> clock)
    {
        ArgumentNullException.ThrowIfNull(site);
        return OpenFound(LineSearch.Found(site, GpioChips.Look), clock);
    }

    /// <summary>Takes every line of a site, and begins to read what is on the buses of the kernel.</summary>
    /// <param name="site">A site whose I/O is on GPIO lines.</param>
    /// <param name="clock">The clock that the scan lives by, for any thread.</param>
    /// <exception cref="IOException">A chip or a line cannot be had; the message says which, why and what to do. A bus that cannot be
    /// had is no reason: its sensors are unknown until it can.</exception>
    public static GpioRackIo Open(Site site, Func<MonotonicTime> clock)
    {
        ArgumentNullException.ThrowIfNull(site);
        var found = LineSearch.Found(site, GpioChips.Look);
        var opened = OpenFound(found, clock);
        opened.probes = ProbeBoard.Begin(found, LineSearch.PlanOf(found).Probes, ProbePorts.OfBoard, clock);
        return opened;
    }

    /// <summary>Called at any edge on a contact line, so that whoever sleeps until the next scan may scan at once; null while nobody wants
    /// to know. It is called by the thread that fetches edges, straight from the kernel, so it must neither wait nor throw. One call may
    /// stand for several edges.</summary>
    public Action? InputChanged { get; set; }

    /// <summary>One line of text about every relay and sensor: where it is, its polarity, its safe level. For the log.</summary>
    public IEnumerable<string> Describe() => banks.SelectMany(bank => bank.Describe()).Concat(probes.Describe())
            .Concat(heartbeat is null ? [] : [heartbeat.Describe()]);

    /// <inheritdoc/>
    public IoOutcome Read(MonotonicTime now, Readings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        lastSeen = now;
        string? fault = null;
        foreach (var bank in banks)
        {
            fault = Join(fault, bank.Read(now, readings));
        }

        probes.CopyTo(readings);

        return new IoOutcome(fault);
    }

    /// <inheritdoc/>
    public IoOutcome Write(MonotonicTime now, RelayCommands commands)
    {
        ArgumentNullException.ThrowIfNull(commands);
        lastSeen = now;
        string? fault = null;
        foreach (var bank in banks)
        {
            fault = Join(fault, bank.Write(now, commands));
        }

        return new IoOutcome(fault);
    }

    /// <summary>A scan was good: the heartbeat goes on, where there is one. Never waits and never throws.</summary>
    /// <param name="now">The time of the scan.</param>
    public void Beat(MonotonicTime now) => heartbeat?.Beat(now);

    /// <inheritdoc/>
    public IoOutcome WriteLast(MonotonicTime now, RelayCommands commands)
    {
        // A part on a bus says what it was told while it may still be at it, so its lines are read back once more when it has done it.
        var first = Write(now, commands);
        return chips is null ? first : new IoOutcome(Join(chips.Settle(), Write(now, commands).Fault));
    }

    /// <summary>Drives every relay line to the level of its load's safe state and reads it back; one on a bus once its part was seen to
    /// follow. The lines stay held.</summary>
    /// <returns>Whether every relay followed.</returns>
    public IoOutcome MakeSafe() => WriteLast(lastSeen, safe);

    /// <summary>Drives every relay line to its safe level, then lets all lines go. Call <see cref="MakeSafe"/> before to
    /// learn whether that worked.</summary>
    public void Dispose()
    {
        Write(lastSeen, safe);
        Release();
    }

    /// <summary>Opens a part on a bus of the kernel.</summary>
    internal static I2cDevice OpenPart(BusPart part) => I2cDevice.Create(new I2cConnectionSettings(part.Bus, part.Address));

    private static GpioRackIo OpenFound(Site site, Func<MonotonicTime> clock)
    {
        var chips = new ChipOpener(LineSearch.PlanOf(site).Expanders, OpenPart, clock);
        try
        {
            return new GpioRackIo(site, chips.Open) { chips = chips };
        }
        catch
        {
            chips.Dispose();
            throw;
        }
    }

    private void Release()
    {
        probes.Dispose();
        heartbeat?.Dispose();

        Array.ForEach(banks, bank => bank.Dispose());
        chips?.Dispose();
    }

    private GpioBank[] BanksOf(Site site, Func<string, GpioDriver> openChip)
    {
        var plan = LineSearch.PlanOf(site);
        var labels = plan.Relays.Select(relay => relay.Line.Chip)
            .Concat(plan.Contactors.Select(contactor => contactor.Line.Chip))
            .Concat(plan.Contacts.Select(contact => contact.Line.Chip))
            .Distinct(StringComparer.Ordinal);
        return
        [
            .. labels.Select(label => new GpioBank(
                openChip,
                label,
                [.. OutputsOf(site, plan).Where(output => output.Chip == label).Select(output => output.Output)],
                [.. plan.Contacts.Where(contact => contact.Line.Chip == label)
                    .Select(contact => new ContactInput(site[contact.Sensor], contact, () => InputChanged?.Invoke()))])),
        ];
    }

    private static IEnumerable<(string Chip, OutputLine Output)> OutputsOf(Site site, GpioIo plan) =>
        plan.Relays.Select(relay => (relay.Line.Chip, (OutputLine)new RelayOutput(site[relay.Load], relay)))
            .Concat(plan.Contactors.Select(contactor =>
                (contactor.Line.Chip, (OutputLine)new ContactorOutput(site[contactor.Circuit], contactor))));

    private static string? Join(string? first, string? second) =>
        first is null || second is null ? first ?? second : first + "; " + second;
}
