using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>What batches ask is something that the rack has: tiers with lights, each once, and floods.</summary>
internal static class ForBatchesChecks
{
    private const string Remedy = "remove `for-batches`; the growing book writes it anew where it is wanted";

    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack.ForBatches is not { } part || rack.Tiers.IsEmpty || rack.ScheduleAsWritten is not { } schedule)
        {
            return;
        }

        if (part.Asked.FloodsPerDay > 0 && schedule.Floods is null)
        {
            complaints.Refuse(part.Place, "floods are asked for, and the schedule has none to say how to flood", Remedy);
        }

        var seen = new HashSet<int>();
        foreach (var (tier, place) in part.Asked.Tiers.Zip(part.TierPlaces))
        {
            if (tier.Tier > rack.Tiers.Length)
            {
                complaints.Refuse(place, $"light is asked for on tier {tier.Tier}, and the rack has {rack.Tiers.Length}", Remedy);
            }
            else if (!seen.Add(tier.Tier))
            {
                complaints.Refuse(place, $"tier {tier.Tier} stands here a second time", "keep one of them");
            }
            else if (rack.Tiers[tier.Tier - 1].Light is null || !schedule.HasLights)
            {
                complaints.Refuse(place, $"light is asked for on tier {tier.Tier}, which is never lit", Remedy);
            }
        }
    }
}
