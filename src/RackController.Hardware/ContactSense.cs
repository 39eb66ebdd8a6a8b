using RackController.Model;

namespace RackController.Hardware;

/// <summary>Which value of a contact asks for action, so that debouncing may never delay it.</summary>
internal static class ContactSense
{
    /// <summary>The value on the harmful side: 0 where a contact reports that something needed is there, 1 where it reports
    /// water that ends a flood or should not be.</summary>
    /// <param name="kind">A kind of contact.</param>
    internal static double HarmfulValue(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat or SensorKind.SupplySense => 0,
        SensorKind.ReservoirFullFloat or SensorKind.TrayFullFloat or SensorKind.TrayHighFloat or SensorKind.LeakRope => 1,
        _ => throw new InvariantBrokenException($"A {kind} is no contact, so it cannot sit on a GPIO line."),
    };
}
