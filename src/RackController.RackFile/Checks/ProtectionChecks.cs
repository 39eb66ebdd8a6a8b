using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>Something notices a dry pump and water on the floor. Both are warnings only: many racks run without. What other
/// sensors would buy is no complaint, and for <see cref="MissingParts"/> to say.</summary>
internal static class ProtectionChecks
{
    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack.Pump is not { } pump || !rack.KnowsAllSensors)
        {
            return;
        }

        if (rack.Sensors.OfKind(SensorKind.ReservoirLowFloat) is null)
        {
            var helper = rack.AllSensors.Any(sensor => sensor.Kind is SensorKind.PumpFlow or SensorKind.ReservoirLevel);
            complaints.Warn(
                pump.Load.Place, helper ? "the reservoir has no low float" : "nothing keeps the pump from running dry",
                "a float in the reservoir (`low-float: 60 mm` in `sensors`) would stop it within a second");
        }

        var hasHighFloat = rack.AllSensors.Any(sensor => sensor.Kind == SensorKind.TrayHighFloat);
        var hasLeakRope = rack.Sensors.OfKind(SensorKind.LeakRope) is not null;
        if (!hasHighFloat && !hasLeakRope)
        {
            complaints.Warn(
                rack.Place, "nothing notices water on the way to the floor",
                "a leak rope (`leak-rope: yes` in the rack's `sensors`) or a high float on the lowest tray would stop the pump");
        }
    }
}
