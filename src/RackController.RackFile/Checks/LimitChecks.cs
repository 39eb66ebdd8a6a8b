using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>The limits fit each other.</summary>
internal static class LimitChecks
{
    /// <summary>The cause-and-effect table promises that a float cuts the pump this soon.</summary>
    private static readonly Duration tripsWithin = Duration.FromSeconds(1);

    public static void Run(RackPart rack, ScanTiming? scan, Complaints complaints)
    {
        if (rack.Limits is not { } part)
        {
            return;
        }

        var limits = part.Limits;
        if (limits.ServiceHoldWarning >= limits.ServiceHoldMaximum)
        {
            complaints.Refuse(
                part.Places("service-hold-warning"), "a service hold would warn before it begins",
                $"write less than `service-hold-maximum` ({Say.Time(limits.ServiceHoldMaximum)})");
        }

        if (scan is not null && scan.Period * limits.SamplesToTrip > tripsWithin)
        {
            complaints.Refuse(
                part.Places("samples-to-trip"),
                $"a float would not cut the pump within a second, as {limits.SamplesToTrip} scans take longer",
                "write fewer samples, or a shorter `period` of the scan");
        }

        if (limits.WaterColdC >= limits.WaterWarmC)
        {
            complaints.Refuse(
                part.Places("water-cold"), "water cannot be too cold and too warm at once",
                $"write less than `water-warm` ({Say.Number(limits.WaterWarmC, 1)} °C)");
        }

        if (limits.PumpMaximumRun > limits.PumpDailyBudget)
        {
            complaints.Refuse(
                part.Places("pump-daily-budget"), $"less than a single run of the pump ({Say.Time(limits.PumpMaximumRun)})",
                "raise `pump-daily-budget`, or lower `pump-maximum-run`");
        }
    }
}
