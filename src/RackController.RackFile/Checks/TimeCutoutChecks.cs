using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>A time relay in the pump's wire opens after the controller would have ended the pump's run, and not long after.</summary>
internal static class TimeCutoutChecks
{
    // Simple time relays keep their time to a tenth or so; common practice, no source.
    private const double LeastShare = 1.1;
    private const double MostShare = 2;

    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack is not { Wired.TimeCutout: { Cutout.After: var after } part, Limits.Limits.PumpMaximumRun: var longest })
        {
            return;
        }

        if (after < longest * LeastShare)
        {
            complaints.Refuse(
                part.Place,
                $"the time cutout opens the pump's wire after {Say.Time(after)}, and the controller lets the pump run {Say.Time(longest)}",
                $"set it to {Say.Time(longest * LeastShare)} or more, or lower `pump-maximum-run` in `limits`");
        }
        else if (after > longest * MostShare)
        {
            complaints.Warn(
                part.Place, $"a pump whose relay has welded may run {Say.Time(after)} before the time cutout opens its wire",
                $"set it to little more than `pump-maximum-run` ({Say.Time(longest)})");
        }
    }
}
