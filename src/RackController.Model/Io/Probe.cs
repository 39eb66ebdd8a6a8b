using System.Collections.Immutable;

namespace RackController.Model;

/// <summary>How a sensor that measures a value is read on a board. Sensors without one stay missing.</summary>
/// <param name="Sensor">The sensor.</param>
public abstract record Probe(SensorId Sensor)
{
    /// <summary>The part on an I2C bus that measures it; null for one that is on no such bus.</summary>
    public virtual BusPart? Carrier => null;
}

/// <summary>A thermometer on the kernel's 1-wire bus.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Code">Its name there: the family in two hexadecimal digits, a hyphen and the serial number in twelve, such as
/// <c>28-0316a2794bff</c>.</param>
public sealed record OneWireProbe(SensorId Sensor, string Code) : Probe(Sensor);

/// <summary>A flow meter that gives a pulse for each bit of volume, on a GPIO line.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Line">Its line; a pulse is where the level rises.</param>
/// <param name="Pull">The pull that the board puts on the line.</param>
/// <param name="PulsesPerL">Pulses for a litre, above 0: by its data sheet, or measured with a bucket.</param>
public sealed record PulseProbe(SensorId Sensor, GpioLine Line, LinePull Pull, double PulsesPerL) : Probe(Sensor);

/// <summary>Temperature or humidity of the air, or light, as a part on an I2C bus measures it by itself.</summary>
/// <param name="Sensor">The sensor; its kind says what.</param>
/// <param name="Part">The part.</param>
public sealed record PartProbe(SensorId Sensor, BusPart Part) : Probe(Sensor)
{
    /// <inheritdoc/>
    public override BusPart Carrier => Part;
}

/// <summary>A voltage on an input of a converter, which stands for what is measured. Of a current it is the effective value of what
/// alternates.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Part">The converter.</param>
/// <param name="Input">Its input: 0 to 3.</param>
/// <param name="Points">Voltages with what they stand for, at least two, in rising order of voltage. Between and beyond them a straight
/// line holds.</param>
public sealed record AnalogueProbe(SensorId Sensor, BusPart Part, int Input, ImmutableArray<CalibrationPoint> Points) : Probe(Sensor)
{
    /// <inheritdoc/>
    public override BusPart Carrier => Part;
}

/// <summary>What a voltage stands for.</summary>
/// <param name="VoltageV">The voltage, V.</param>
/// <param name="Value">What it stands for, in the unit of the sensor's kind.</param>
public sealed record CalibrationPoint(double VoltageV, double Value);
