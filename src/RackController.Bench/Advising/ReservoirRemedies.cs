using RackController.Plant;

namespace RackController.Bench;

/// <summary>More water for a flood to draw from.</summary>
internal static class ReservoirRemedies
{
    private const double StepL = 5;
    private const double MoreEachTime = 1.1;
    private const int MostSteps = 15;

    public static IEnumerable<FloodChange> FillHigher(FloodSurvey survey)
    {
        var tank = survey.Rack.Reservoir;
        return Steps(tank.NormalVolumeL)
            .TakeWhile(volumeL => volumeL < tank.CapacityL)
            .Append(tank.CapacityL)
            .Select(volumeL => new FloodChange(
                FloodEffort.Setting,
                $"fill the reservoir to {volumeL:0} L instead of {tank.NormalVolumeL:0} L",
                survey.Rack with { Reservoir = tank with { NormalVolumeL = volumeL } }));
    }

    // As deep as it was, so that floats and intake stay where they are.
    public static IEnumerable<FloodChange> UseALarger(FloodSurvey survey)
    {
        var tank = survey.Rack.Reservoir;
        return Steps(tank.CapacityL).Select(capacityL => new FloodChange(
            FloodEffort.Part,
            $"use a reservoir of {capacityL:0} L, as deep as this one of {tank.CapacityL:0} L",
            survey.Rack with
            {
                Reservoir = tank with { CapacityL = capacityL, NormalVolumeL = tank.NormalVolumeL / tank.CapacityL * capacityL },
            }));
    }

    private static IEnumerable<double> Steps(double fromL) =>
        Enumerable.Range(1, MostSteps).Select(step => StepL * Math.Ceiling(fromL * Math.Pow(MoreEachTime, step) / StepL));
}
