using System.Globalization;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Says what differs from the month before, and where to look first: what such a change usually is (common practice, no
/// source).</summary>
internal static class DriftWords
{
    /// <summary>It in a sentence.</summary>
    public static string Of(FloodDrift drift, ShownUnits units)
    {
        var percent = Math.Abs(drift.Percent).ToString("0", CultureInfo.InvariantCulture);
        var subject = drift.Tier is { } tier ? $"Tier {tier}" : "A flood";
        var isMore = drift.Percent > 0;
        return drift.Of switch
        {
            DriftOf.TierFill => $"{subject} fills {percent} % {Speed(isMore)} than in the 30 days before ({Seconds(drift)}): "
                + (isMore ? "check its screen and its throttle or valve." : "see whether its weep is clogged, or less stands in the tray."),
            DriftOf.TierDrain => $"{subject} drains {percent} % {Speed(isMore)} than in the 30 days before ({Seconds(drift)}): "
                + (isMore ? "look for roots and media in its weep and standpipe." : "see whether it still fills to its depth."),
            DriftOf.Fill => $"{subject} takes {percent} % {(isMore ? "longer" : "less time")} to fill than in the 30 days before "
                + $"({Seconds(drift)}): "
                + (isMore ? "check the pump and the screen at its intake." : "see whether every tray still fills."),
            DriftOf.Volume => $"{subject} takes {percent} % {(isMore ? "more" : "less")} water than in the 30 days before "
                + $"({units.Of("L").Words(drift.Before, 0)} then, {units.Of("L").Words(drift.Lately, 0)} now): "
                + (isMore ? "look for a leak." : "check the pump, its screen and the level sensor."),
            _ => throw new InvariantBrokenException($"every drift has its words, {drift.Of} too"),
        };
    }

    private static string Speed(bool isMore) => isMore ? "slower" : "faster";

    private static string Seconds(FloodDrift drift) => $"{Number(drift.Before)} s then, {Number(drift.Lately)} s now";

    private static string Number(double value) => value.ToString("0", CultureInfo.InvariantCulture);
}
