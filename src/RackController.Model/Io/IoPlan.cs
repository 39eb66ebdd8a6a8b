using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>Where the relays and sensors of a site are.</summary>
public abstract record IoPlan;

/// <summary>There is no board: the simulated rack answers.</summary>
public sealed record SimulatedIo : IoPlan;

/// <summary>Relays and contacts sit on GPIO lines of a board, driven through the kernel's character device.</summary>
/// <param name="Relays">One output line per load.</param>
/// <param name="Contacts">One input line per contact sensor.</param>
public sealed record GpioIo(ImmutableArray<RelayLine> Relays, ImmutableArray<ContactLine> Contacts) : IoPlan
{
    /// <summary>One output line per contactor.</summary>
    public ImmutableArray<ContactorLine> Contactors { get; init; } = [];

    /// <summary>The line that changes its level while scans are good, for a wired watchdog relay; null for none.</summary>
    public GpioLine? Heartbeat { get; init; }

    /// <summary>The parts on I2C buses whose lines are among those of the relays, by their name in place of a chip's label.</summary>
    public ImmutableArray<BusPart> Expanders { get; init; } = [];

    /// <summary>How each sensor that measures a value is read; those that are not here stay missing.</summary>
    public ImmutableArray<Probe> Probes { get; init; } = [];
}

/// <summary>The output line that switches one load's relay.</summary>
/// <param name="Load">The load.</param>
/// <param name="Line">The line.</param>
/// <param name="ActiveLow">Whether the coil is energised by a low level, as on most opto-coupled relay boards.</param>
public sealed record RelayLine(LoadId Load, GpioLine Line, bool ActiveLow);

/// <summary>The output line that opens the contactor of a circuit. Its coil at rest leaves the circuit closed.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="Line">The line.</param>
/// <param name="ActiveLow">Whether the coil is energised, and the circuit cut, by a low level.</param>
public sealed record ContactorLine(CircuitId Circuit, GpioLine Line, bool ActiveLow);

/// <summary>The pull that a board puts on an input line, which decides what a broken wire reads as.</summary>
public enum LinePull
{
    /// <summary>None, or one outside the board.</summary>
    None,

    /// <summary>Towards the supply: an open contact reads high.</summary>
    Up,

    /// <summary>Towards ground: an open contact reads low.</summary>
    Down,
}

/// <summary>The input line of one contact sensor.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Line">The line.</param>
/// <param name="ActiveLow">Whether a low level means 1 (wet, present). Default yes.</param>
/// <param name="Pull">The pull to ask for. Default up.</param>
/// <param name="Debounce">How long a level must hold before the reading turns to the harmless side; it turns to the
/// harmful side at once. Default 50 ms; 0 to 5 s.</param>
public sealed record ContactLine(SensorId Sensor, GpioLine Line, bool ActiveLow, LinePull Pull, Duration Debounce);
