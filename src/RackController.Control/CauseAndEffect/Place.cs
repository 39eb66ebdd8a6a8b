using RackController.Model;

namespace RackController.Control;

/// <summary>Where an interlock stands, and so whose facts it looks at: a rack's, a circuit's or, with neither, the controller's
/// own.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Rack">The rack; null elsewhere.</param>
/// <param name="Circuit">The circuit; null elsewhere.</param>
internal readonly record struct Place(string Name, RackId? Rack, CircuitId? Circuit)
{
    public static Place Controller { get; } = new("controller", null, null);

    public static Place Of(Rack rack) => new(rack.Name, rack.Id, null);

    public static Place Of(Rack rack, int tierNumber) => new($"{rack.Name}/tier {tierNumber}", rack.Id, null);

    public static Place Of(Circuit circuit) => new(circuit.Name, null, circuit.Id);

    /// <summary>A load as its circuit looks at it.</summary>
    public static Place Of(Load load) => new(load.Name, null, load.Circuit);

    /// <summary>A load as its rack looks at it.</summary>
    public static Place Of(Rack rack, Load load) => new(load.Name, rack.Id, null);

    public static Place Of(Sensor sensor) => new(sensor.Name, sensor.Rack, sensor.Circuit);
}
