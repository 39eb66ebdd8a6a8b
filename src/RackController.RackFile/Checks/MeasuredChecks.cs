using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>What was measured is of tiers that the rack has, each once.</summary>
internal static class MeasuredChecks
{
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
