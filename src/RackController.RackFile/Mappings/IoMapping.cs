using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>Where the relays and sensors are, as written.</summary>
internal abstract record IoPart;

/// <summary>There is no board.</summary>
internal sealed record SimulatedIoPart : IoPart;

/// <summary>On GPIO lines, with what holds for each line that does not say otherwise.</summary>
internal sealed record GpioIoPart(
    Place Place, string Chip, bool RelaysActiveLow, bool ContactsActiveLow, LinePull Pull, Duration Debounce) : IoPart
{
    /// <summary>The parts on its I2C buses.</summary>
    public ImmutableArray<BusPartPart> Parts { get; init; } = [];

    /// <summary>The line that changes while scans are good; null for none.</summary>
    public LinePart? Heartbeat { get; init; }
}

/// <summary>Reads where the relays and sensors are.</summary>
internal sealed class IoMapping : Mapping<IoPart>
{
    private static readonly Key<bool> simulatedKey = Key.Optional(
        "simulated", new ChoiceKind<bool>([("simulated", true)]), "There is no board: the simulated rack answers.");

    private static readonly Key<GpioIoPart> gpioKey = Key.Optional(
        "gpio", new GpioMapping(), "Relays and contacts sit on GPIO lines of a board.");

    /// <inheritdoc/>
    public override string Name => "io";

    /// <inheritdoc/>
    public override string Doc => "Where the relays and sensors are: `simulated`, or `gpio` with a chip.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [simulatedKey, gpioKey];

    /// <inheritdoc/>
    protected override Key? Shorthand => simulatedKey;

    /// <inheritdoc/>
    protected override IoPart? Build(MappingReader keys)
    {
        if (keys.Has(simulatedKey) == keys.Has(gpioKey))
        {
            keys.Complaints.Refuse(keys.Place, "not one place for the relays", "write `io: simulated`, or `gpio` with its chip");
            return null;
        }

        return keys.Has(gpioKey) ? keys.Get(gpioKey) : new SimulatedIoPart();
    }
}

/// <summary>Reads what holds for the GPIO lines of a site.</summary>
internal sealed class GpioMapping : Mapping<GpioIoPart>
{
    private static readonly Key<string> chipKey = Key.Required(
        "chip", Values.Chip,
        "The label that the kernel gives the chip, as `gpiodetect` prints it. Its number will do too (0 is `/dev/gpiochip0`), and may "
        + "be another chip's after the next boot or update, where the label stays.");

    private static readonly Key<bool> relaysActiveKey = Key.Required(
        "relays-active", Values.Active,
        "Which level energises the coils: `low` on most opto-coupled boards. There is no default, because a wrong guess turns "
        + "every relay over.");

    private static readonly Key<bool> contactsActiveKey = Key.Defaulted(
        "contacts-active", Values.Active, "low", "Which level means 1: wet, or supply present.");

    private static readonly Key<LinePull> pullKey = Key.Defaulted(
        "contacts-pull", Values.Pull, "up", "The pull on input lines, which decides what a broken wire reads as.");

    private static readonly Key<Duration> debounceKey = Key.Defaulted(
        "contacts-debounce", Values.Duration("0 ms", "5 s"), "50 ms",
        "How long a level must hold before a reading turns to the harmless side.");

    private static readonly Key<ImmutableArray<BusPartPart>> partsKey = Key.Optional(
        "parts", Values.List(new BusPartMapping(), "part", 100), "The parts on the board's I2C buses that sensors are read from.");

    private static readonly Key<LinePart> heartbeatKey = Key.Optional(
        "heartbeat", new HeartbeatMapping(),
        "A line that changes its level while scans are good, for a wired watchdog relay that lets go when it does not.");

    /// <inheritdoc/>
    public override string Name => "gpio";

    /// <inheritdoc/>
    public override string Doc => "The board's GPIO chip, and what holds for each line that does not say otherwise.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [chipKey, relaysActiveKey, contactsActiveKey, pullKey, debounceKey, partsKey, heartbeatKey];

    /// <inheritdoc/>
    protected override GpioIoPart? Build(MappingReader keys) => new(
        keys.Place, keys.Get(chipKey), keys.Get(relaysActiveKey), keys.Get(contactsActiveKey), keys.Get(pullKey),
        keys.Get(debounceKey))
    {
        Parts = keys.Has(partsKey) ? keys.Get(partsKey) : [],
        Heartbeat = keys.Find(heartbeatKey),
    };
}

/// <summary>Reads the line of a heartbeat.</summary>
internal sealed class HeartbeatMapping : Mapping<LinePart>
{
    private static readonly Key<WrittenLine> lineKey = Key.Required("line", Values.Line, "Its offset on the chip, or its name.");

    private static readonly Key<string> chipKey = Key.Optional(
        "chip", Values.Chip, "Label or number of the GPIO chip. Without it: the chip of the I/O section.");

    /// <inheritdoc/>
    public override string Name => "heartbeat";

    /// <inheritdoc/>
    public override string Doc => "The line that changes its level while scans are good.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [lineKey, chipKey];

    /// <inheritdoc/>
    protected override Key? Shorthand => lineKey;

    /// <inheritdoc/>
    protected override LinePart? Build(MappingReader keys) => new(keys.Place, keys.Get(lineKey), keys.Find(chipKey), ActiveLow: false);
}
