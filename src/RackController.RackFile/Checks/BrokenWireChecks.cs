using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>A broken wire to a contact reads as trouble, so that it is found by a pump that stops and not by a floor. A float that only
/// ends a fill is left out: what it fails to tell, the fill's time limit ends.</summary>
internal static class BrokenWireChecks
{
    /// <summary>Warns where a broken wire would read as if all were well.</summary>
    public static void Run(string name, SensorPart sensor, GpioIoPart gpio, Complaints complaints)
    {
        if (Trouble(sensor.Kind) is not { } trouble)
        {
            return;
        }

        var isActiveLow = sensor.Line?.ActiveLow ?? gpio.ContactsActiveLow;
        var pull = sensor.Pull ?? gpio.Pull;
        if (pull == LinePull.None)
        {
            complaints.Warn(
                sensor.Place, $"nothing holds the line of {name} where its wire is broken",
                "write `pull: up`, or see that a resistor holds it");
        }
        else if (pull == LinePull.Up == isActiveLow == (trouble == 1))
        {
            complaints.Warn(sensor.Place, $"a broken wire to {name} reads {WellWord(sensor.Kind)}", Remedy(sensor.Kind));
        }
    }

    /// <summary>The reading that stops something; null where a broken wire stops nothing anyway.</summary>
    private static double? Trouble(SensorKind kind) =>
        kind is SensorKind.TrayFullFloat or SensorKind.ReservoirFullFloat ? null : kind.HarmfulValue();

    private static string WellWord(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat => "as if there were water",
        SensorKind.SupplySense => "as if there were a supply",
        _ => "dry",
    };

    private static string Remedy(SensorKind kind) => kind switch
    {
        SensorKind.ReservoirLowFloat =>
            "wire a contact that closes while water reaches it and write `active: low` and `pull: up`, so that a broken wire stops the "
            + "pump",
        SensorKind.SupplySense =>
            "wire a contact that closes while the supply is there and write `active: low` and `pull: up`, so that a broken wire is seen",
        _ => "wire a contact that opens when wet and write `active: high` and `pull: up`, so that a broken wire stops the pump",
    };
}
