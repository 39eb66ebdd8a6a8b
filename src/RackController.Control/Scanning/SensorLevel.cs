using RackController.Model;

namespace RackController.Control;

/// <summary>A value of a measuring sensor at which something may be decided differently. Between two such values nothing depends on
/// what exactly the sensor says.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Value">The value, in its unit.</param>
public readonly record struct SensorLevel(SensorId Sensor, double Value);
