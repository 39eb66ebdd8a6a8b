using NodaTime;
using NodaTime.Text;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>What was measured is of tiers that the rack has, each once, and of a day that has been.</summary>
internal static class MeasuredChecks
{
    /// <summary>Refuses a day to come: floods would never be held against what is said to have been measured on it.</summary>
    /// <param name="today">The local date.</param>
    /// <param name="site">The file as written.</param>
    /// <param name="complaints">Where to say so.</param>
    public static void RunOn(LocalDate today, SitePart site, Complaints complaints)
    {
        foreach (var measured in site.Racks.Select(rack => rack.Measured).OfType<MeasuredPart>())
        {
            if (measured.Measured.On > today)
            {
                complaints.Refuse(
                    measured.OnPlace,
                    $"`on` is {LocalDatePattern.Iso.Format(measured.Measured.On)}, a day to come: today is "
                        + $"{LocalDatePattern.Iso.Format(today)} by the clock of this machine",
                    "write the date of the last flood that was timed, or set the clock");
            }
        }
    }

    /// <summary>Runs what needs no date.</summary>
    /// <param name="rack">The rack as written.</param>
    /// <param name="complaints">Where to say what does not fit.</param>
    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack.Measured is not { } measured || rack.Tiers.IsEmpty)
        {
            return;
        }

        var seen = new HashSet<int>();
        foreach (var (tier, place) in measured.Measured.Tiers.Zip(measured.TierPlaces))
        {
            if (tier.Number > rack.Tiers.Length)
            {
                complaints.Refuse(
                    place, $"tier {tier.Number} was measured, and the rack has {rack.Tiers.Length}",
                    "remove `measured` and time the rack again with `tune`");
            }
            else if (!seen.Add(tier.Number))
            {
                complaints.Refuse(place, $"tier {tier.Number} stands here a second time", "keep one of them");
            }
        }
    }
}
