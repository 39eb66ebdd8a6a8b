using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>A flooded tray keeps its water: standpipe below the rim, floats where they can tell something.</summary>
internal static class TrayChecks
{
    /// <summary>Water stands above a standpipe while it overflows, by about 10 mm at 8 L/min over a 1 in pipe.</summary>
    internal const double HeadOverStandpipeMm = 10;

    /// <summary>The reader takes none shorter, so none is advised.</summary>
    private const double ShortestStandpipeMm = 5;

    /// <summary>Plan area of a 10 x 20 in insert tray, m2.</summary>
    private const double InsertTrayM2 = 0.254 * 0.508;

    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack.Tray is not { } usual)
        {
            return;
        }

        foreach (var tier in rack.Tiers.Where(tier => tier.IsShapeSound))
        {
            var part = tier.TrayOver(usual);
            var tray = part.ToTray();
            CheckTray(part, tray, complaints);
            foreach (var sensor in tier.Sensors.Sensors)
            {
                CheckFloat(sensor, tray, complaints);
            }
        }
    }

    private static void CheckTray(TrayPart part, FloodTray tray, Complaints complaints)
    {
        var (standpipe, rim) = (Say.Number(tray.StandpipeHeightMm, 1), Say.Number(tray.RimDepthMm, 1));
        var tallestMm = Math.Max(ShortestStandpipeMm, tray.RimDepthMm - HeadOverStandpipeMm);
        if (tray.StandpipeHeightMm >= tray.RimDepthMm)
        {
            complaints.Refuse(
                part.StandpipePlace,
                $"the standpipe is {standpipe} mm high and the tray's rim {rim} mm, so water leaves over the rim",
                $"shorten the standpipe to at most {Say.Number(tallestMm)} mm, or use a deeper tray");
        }
        else if (tray.StandpipeHeightMm > tray.RimDepthMm - HeadOverStandpipeMm)
        {
            complaints.Warn(
                part.StandpipePlace,
                $"the standpipe ({standpipe} mm) ends less than {HeadOverStandpipeMm} mm below the rim ({rim} mm)",
                "water stands that high above an overflowing standpipe; shorten it");
        }

        if (tray.Contents.InsertTrays * InsertTrayM2 > tray.AreaM2)
        {
            complaints.Warn(
                part.Place, $"{tray.Contents.InsertTrays} insert trays of 10 x 20 in do not fit side by side into this tray",
                "check `length`, `width` and `insert-trays`");
        }
    }

    private static void CheckFloat(SensorPart sensor, FloodTray tray, Complaints complaints)
    {
        var height = Say.Number(sensor.HeightMm, 1);
        if (sensor.Kind == SensorKind.TrayHighFloat && sensor.HeightMm <= tray.StandpipeHeightMm)
        {
            complaints.Refuse(
                sensor.Place, $"the high float switches at {height} mm, where every flood reaches it",
                $"place it above the standpipe ({Say.Number(tray.StandpipeHeightMm, 1)} mm) and below the rim");
        }
        else if (sensor.Kind == SensorKind.TrayHighFloat && sensor.HeightMm >= tray.RimDepthMm)
        {
            complaints.Refuse(
                sensor.Place, $"the high float switches at {height} mm, when water already runs over the rim",
                $"place it below the rim ({Say.Number(tray.RimDepthMm, 1)} mm)");
        }
        else if (sensor.Kind == SensorKind.TrayHighFloat && sensor.HeightMm < tray.StandpipeHeightMm + HeadOverStandpipeMm)
        {
            complaints.Warn(
                sensor.Place, $"the high float switches less than {HeadOverStandpipeMm} mm above the standpipe",
                "an ordinary flood may reach it and latch the pump; place it higher");
        }
        else if (sensor.Kind == SensorKind.TrayFullFloat && sensor.HeightMm >= tray.StandpipeHeightMm)
        {
            complaints.Refuse(
                sensor.Place, $"the full float switches at {height} mm, which the water does not reach",
                $"place it below the standpipe ({Say.Number(tray.StandpipeHeightMm, 1)} mm)");
        }
    }
}
