using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Building;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>The reservoir holds what a flood needs, its floats stand where they help, and the pump reaches the top.</summary>
internal static class WaterChecks
{
    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack.Reservoir is not { } part)
        {
            return;
        }

        CheckFloats(rack, part, complaints);
        if (rack is not { Pump: { } pump, Tray: not null, Branch: not null, Supply: not null } || rack.Tiers.Length == 0
            || rack.Tiers.Any(tier => !tier.IsShapeSound))
        {
            return;
        }

        var shape = RackShape.Of(rack);
        CheckVolume(rack, part, shape, complaints);
        if (!shape.PumpReachesTop)
        {
            complaints.Refuse(
                pump.Load.Place,
                $"the pump lifts {Say.Number(pump.Curve.ShutOffHeadM, 1)} m at most, and no water reaches tier {rack.Tiers.Length}",
                "choose a stronger pump, or check its `rated` point");
        }
    }

    private static void CheckVolume(RackPart rack, ReservoirPart part, RackShape shape, Complaints complaints)
    {
        var tank = part.Tank;
        var traysL = rack.Tiers.Where(tier => tier.IsFlooded).Sum(tier => HeldL(shape.Trays[tier.Number - 1]));
        var leftL = tank.NormalVolumeL - traysL;
        var intakeL = tank.PumpIntakeMm * tank.AreaM2;
        var lowFloatL = (rack.Sensors.OfKind(SensorKind.ReservoirLowFloat)?.HeightMm ?? 0) * tank.AreaM2;
        var sums = $"the trays hold {Say.Number(traysL)} L at flood depth, which leaves {Say.Number(Math.Max(0, leftL))} L of "
            + $"{Say.Number(tank.NormalVolumeL)} L in the reservoir";
        if (leftL < intakeL)
        {
            complaints.Refuse(
                part.NormalPlace, $"{sums}, and the pump draws air below {Say.Number(intakeL)} L",
                $"fill to at least {Say.Number(traysL + Math.Max(intakeL, lowFloatL))} L, use a larger reservoir, or flood fewer tiers");
        }
        else if (leftL < lowFloatL && lowFloatL < tank.NormalVolumeL)
        {
            complaints.Warn(
                part.NormalPlace, $"{sums}, and the low float stops the pump below {Say.Number(lowFloatL)} L",
                $"fill to at least {Say.Number(traysL + lowFloatL)} L, or place the low float lower");
        }
    }

    private static void CheckFloats(RackPart rack, ReservoirPart part, Complaints complaints)
    {
        var tank = part.Tank;
        var normalMm = tank.NormalVolumeL / tank.AreaM2;
        if (rack.Sensors.OfKind(SensorKind.ReservoirLowFloat) is { } low)
        {
            var height = Say.Number(low.HeightMm);
            if (low.HeightMm <= tank.PumpIntakeMm)
            {
                complaints.Refuse(
                    low.Place,
                    $"the low float switches at {height} mm, and the pump draws air below {Say.Number(tank.PumpIntakeMm)} mm",
                    "place the float above the pump's intake");
            }
            else if (low.HeightMm >= normalMm)
            {
                complaints.Refuse(
                    low.Place,
                    $"the low float switches at {height} mm, and the water stands at {Say.Number(normalMm)} mm, so the pump never runs",
                    "place the float lower, or fill the reservoir higher");
            }
        }

        if (rack.Sensors.OfKind(SensorKind.ReservoirFullFloat) is { } full && full.HeightMm >= tank.DepthMm)
        {
            complaints.Refuse(
                full.Place,
                $"the full float switches at {Say.Number(full.HeightMm)} mm, above the brim ({Say.Number(tank.DepthMm)} mm)",
                "place it below the brim");
        }
    }

    private static double HeldL(FloodTray tray) => RackGeometry.HeldL(tray, tray.StandpipeHeightMm);
}
