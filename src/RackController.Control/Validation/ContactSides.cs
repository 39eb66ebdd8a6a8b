using RackController.Model;

namespace RackController.Control;

/// <summary>Which side of a contact is the harmful one, on which it must be believed fast.</summary>
internal static class ContactSides
{
    /// <summary>True where 1 is the harmful side, false where 0 is; null for a measured value. A float that only ends a fill
    /// harms when it is believed full too late.</summary>
    public static bool? HarmfulContact(this Sensor sensor) => sensor.Kind switch
    {
        SensorKind.ReservoirLowFloat or SensorKind.SupplySense => false,
        SensorKind.TrayHighFloat or SensorKind.LeakRope or SensorKind.TrayFullFloat or SensorKind.ReservoirFullFloat => true,
        _ => null,
    };
}
