using System.Globalization;
using RackController.Model;

namespace RackController.Service;

/// <summary>Says what differs from the month before or from the fit, and where to look first: what such a change usually is (common
/// practice, no source).</summary>
public static class DriftWords
{
    /// <summary>It in a sentence.</summary>
    /// <param name="drift">The drift.</param>
    /// <param name="units">The units that the grower is shown.</param>
    public static string Of(FloodDrift drift, ShownUnits units)
    {
        ArgumentNullException.ThrowIfNull(drift);
        ArgumentNullException.ThrowIfNull(units);
        var percent = Math.Abs(drift.Percent).ToString("0", CultureInfo.InvariantCulture);
        var subject = drift.Tier is { } tier ? $"Tier {tier}" : "A flood";
        var isMore = drift.Percent > 0;
        var since = drift.FittedOn is { } fitted ? $"it was fitted to on {fitted:uuuu-MM-dd}" : "in the 30 days before";
        return drift.Of switch
        {
            DriftOf.TierFill => $"{subject} fills {percent} % {Speed(isMore)} than {since} ({Seconds(drift)}): "
                + (isMore ? "check its screen and its throttle or valve." : "see whether its weep is clogged, or less stands in the tray."),
            DriftOf.TierDrain => $"{subject} drains {percent} % {Speed(isMore)} than {since} ({Seconds(drift)}): "
                + (isMore ? "look for roots and media in its weep and standpipe." : "see whether it still fills to its depth."),
            DriftOf.Fill => $"{subject} takes {percent} % {(isMore ? "longer" : "less time")} to fill than {since} "
                + $"({Seconds(drift)}): "
                + (isMore ? "check the pump and the screen at its intake." : "see whether every tray still fills."),
            DriftOf.Volume => $"{subject} takes {percent} % {(isMore ? "more" : "less")} water than {since} "
                + $"({units.Of("L").Words(drift.Before, 0)} then, {units.Of("L").Words(drift.Lately, 0)} now): "
                + (isMore ? "look for a leak." : "check the pump, its screen and the level sensor."),
            _ => throw new InvariantBrokenException($"every drift has its words, {drift.Of} too"),
        };
    }

    private static string Speed(bool isMore) => isMore ? "slower" : "faster";

    private static string Seconds(FloodDrift drift) => $"{Number(drift.Before)} s then, {Number(drift.Lately)} s now";

    private static string Number(double value) => value.ToString("0", CultureInfo.InvariantCulture);
}
