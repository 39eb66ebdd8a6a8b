using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What a circuit carries: by its current sensor, or where none can be believed the sum of the nameplates of what is on.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="CurrentA">What it carries, A.</param>
/// <param name="IsMeasured">Whether a sensor says so.</param>
internal sealed record CircuitLoad(Circuit Circuit, double CurrentA, bool IsMeasured)
{
    /// <summary>Finds it in a picture.</summary>
    public static CircuitLoad Of(Site site, Circuit circuit, SiteStatus status)
    {
        var measured = status.Sensors.FirstOrDefault(
            sensor => sensor.Sensor.Circuit == circuit.Id && sensor.Sensor.Kind == SensorKind.CircuitCurrent && sensor.Doubt is null);
        var nameplatesA = status.Loads
            .Where(load => load.State == SwitchState.On && site[load.Load].Circuit == circuit.Id)
            .Sum(load => site[load.Load].CurrentA(circuit.VoltageV));
        return new CircuitLoad(circuit, measured?.Reading.Value ?? nameplatesA, measured is not null);
    }
}
