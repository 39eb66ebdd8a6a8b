using RackController.RackFile.Binding;
using RackController.RackFile.Building;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>Whoever runs by a reading has a sensor to read.</summary>
internal static class RunChecks
{
    public static void Run(RackPart rack, Complaints complaints)
    {
        foreach (var runner in rack.Fans.Concat(rack.Aerator is null ? [] : [rack.Aerator]))
        {
            if (rack.KnowsAllSensors && runner.Run.OnAbove is { } reading
                && rack.AllSensors.All(sensor => sensor.Kind != ScheduleBuilder.KindOf(reading)))
            {
                var key = reading.IsHumidity ? "air-humidity" : "air-temperature";
                complaints.Refuse(
                    runner.Run.Place, $"{runner.Load.ShortName} runs by a reading that no sensor of this rack gives",
                    $"add `{key}: yes` to the rack's `sensors`, or write `run: always`");
            }
        }
    }
}
