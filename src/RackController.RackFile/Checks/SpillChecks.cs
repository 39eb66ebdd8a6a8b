using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Building;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>What is spilled stays in the drip tray, and a float in the pump's wire hangs where it can act.</summary>
internal static class SpillChecks
{
    /// <summary>What a float, a scan, a relay and a pump that runs out take together, s.</summary>
    private const double ReactionS = 3;

    public static void Run(RackPart rack, Complaints complaints)
    {
        var cutout = rack.Wired?.FloatCutout;
        if (rack.Sensors.OfKind(SensorKind.DripTrayFloat) is { } sensor)
        {
            CheckInDripTray(rack, sensor.Place, "the drip tray float", sensor.HeightMm, complaints);
        }

        if (cutout is { Cutout: { TierNumber: null } below })
        {
            CheckInDripTray(rack, cutout.Place, "the float cutout", below.HeightMm, complaints);
        }
        else if (cutout is { Cutout.TierNumber: { } tier })
        {
            CheckAboveStandpipe(rack, cutout, tier, complaints);
        }
        else if (!rack.HasWired && rack.Pump is { } pump)
        {
            complaints.Warn(
                pump.Load.Place, "nothing wired stops the pump when its relay welds or the controller fails",
                "put a float in series with the pump, and write `wired: { float-cutout: 15 mm }` for one in the drip tray");
        }

        if (rack is { DripTray: not null, Pump: not null, Reservoir: not null, Tray: not null, Branch: not null, Supply: not null }
            && rack.Tiers.Length > 0 && rack.Tiers.All(each => each.IsShapeSound))
        {
            CheckCapacity(rack, rack.DripTray, complaints);
        }
    }

    private static void CheckInDripTray(RackPart rack, Place place, string name, double heightMm, Complaints complaints)
    {
        if (!rack.HasDripTray)
        {
            complaints.Refuse(
                place, $"{name} has no drip tray to hang in", "write `drip-tray: 40 L` with what yours holds, or remove the float");
        }
        else if (rack.DripTray is { Tray: var tray } && heightMm >= tray.DepthMm)
        {
            complaints.Refuse(
                place, $"{name} switches at {Say.Number(heightMm, 1)} mm, when water already runs over the drip tray's rim",
                $"place it below the rim ({Say.Number(tray.DepthMm, 1)} mm), as low as it works");
        }
    }

    private static void CheckAboveStandpipe(RackPart rack, FloatCutoutPart cutout, int tier, Complaints complaints)
    {
        var heightMm = cutout.Cutout.HeightMm;
        if (tier > rack.Tiers.Length)
        {
            complaints.Refuse(
                cutout.Place, $"a float cutout at tier {tier}, which is not there", $"the rack has tiers 1 to {rack.Tiers.Length}");
        }
        else if (rack.Tray is { } usual && rack.Tiers[tier - 1] is { IsShapeSound: true } at)
        {
            CheckAboveStandpipe(cutout.Place, heightMm, at.TrayOver(usual).ToTray(), complaints);
        }
    }

    private static void CheckAboveStandpipe(Place place, double heightMm, FloodTray tray, Complaints complaints)
    {
        var what = $"the float cutout switches at {Say.Number(heightMm, 1)} mm";
        if (heightMm <= tray.StandpipeHeightMm || heightMm >= tray.RimDepthMm)
        {
            complaints.Refuse(
                place, what,
                $"place it above the standpipe ({Say.Number(tray.StandpipeHeightMm, 1)} mm), which every flood reaches, and below "
                + $"the rim ({Say.Number(tray.RimDepthMm, 1)} mm)");
        }
        else if (heightMm < tray.StandpipeHeightMm + TrayChecks.HeadOverStandpipeMm)
        {
            complaints.Warn(
                place, $"{what}, less than {TrayChecks.HeadOverStandpipeMm} mm above the standpipe",
                "an ordinary flood may reach it and open the pump's wire; place it higher");
        }
    }

    /// <summary>The rule: a drip tray holds what lies in it before its float lifts, what the pump gives until it stands still, the
    /// water of the pipes, and the largest tray as deep as a flood fills it. Common practice, no source.</summary>
    private static void CheckCapacity(RackPart rack, DripTrayPart part, Complaints complaints)
    {
        var tray = part.Tray;
        var shape = RackShape.Of(rack);
        var floatMm = rack.Wired?.FloatCutout is { Cutout: { TierNumber: null, HeightMm: var wiredMm } }
            ? wiredMm
            : rack.Sensors.OfKind(SensorKind.DripTrayFloat)?.HeightMm ?? 0;
        var beforeL = tray.CapacityL * Math.Min(1, floatMm / tray.DepthMm);
        var pumpedL = rack.Pump!.Curve.MaxFlowLpm * ReactionS / 60;
        var pipesL = RackGeometry.RiserContentL(shape);
        var trayL = shape.Trays.Max(each =>
            RackGeometry.HeldL(each, Math.Min(each.RimDepthMm, each.StandpipeHeightMm + TrayChecks.HeadOverStandpipeMm)));
        var neededL = beforeL + pumpedL + pipesL + trayL;
        if (neededL > tray.CapacityL)
        {
            complaints.Warn(
                part.Place,
                $"the drip tray holds {Say.Number(tray.CapacityL)} L and may have to hold {Say.Number(neededL)} L "
                + $"({Say.Number(trayL)} L of a tray, {Say.Number(pipesL)} L of the pipes, {Say.Number(pumpedL)} L that the pump "
                + $"gives until it stands still, {Say.Number(beforeL)} L before the float lifts)",
                "use a larger drip tray, or place its float lower");
        }
    }
}
