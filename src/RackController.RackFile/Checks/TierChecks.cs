using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Building;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>The tiers stand one above the other, and their lights are where the schedule looks for them.</summary>
internal static class TierChecks
{
    public static void Run(RackPart rack, Complaints complaints)
    {
        var below = 0.0;
        foreach (var tier in rack.Tiers)
        {
            var heightMm = tier.HeightMm ?? RackGeometry.TrayHeightMm(tier.Number, rack.Tiers.Length);
            if (heightMm <= below)
            {
                complaints.Refuse(
                    tier.HeightPlace, $"tier {tier.Number} is at {Say.Number(heightMm)} mm and not above the tier below it",
                    "list the tiers bottom first, each with a greater height");
            }

            below = heightMm;
            if (!tier.InUse && tier.IsFlooded)
            {
                complaints.Warn(
                    tier.Place, $"tier {tier.Number} is out of use and has no valve, so every flood still reaches it",
                    "close its branch by hand, or give it a `valve`");
            }
        }

        CheckLights(rack, complaints);
        foreach (var tier in rack.Tiers.Where(tier => !tier.HasLight))
        {
            if (tier.Sensors.OfKind(SensorKind.LightLevel) is { } level)
            {
                complaints.Warn(
                    level.Place, $"the light of tier {tier.Number} is measured, and there is no lamp to compare it with",
                    "give the tier a `light`, or remove the sensor if nobody reads it");
            }
        }
    }

    private static void CheckLights(RackPart rack, Complaints complaints)
    {
        if (rack.Schedule is not { } schedule || rack.Tiers.Length == 0)
        {
            return;
        }

        if (!schedule.HasLights && rack.Tiers.FirstOrDefault(tier => tier.Light is not null) is { Light: { } light } dark)
        {
            complaints.Warn(
                light.Load.Place, $"tier {dark.Number} has a light and the schedule has no `lights`",
                "write `lights: { on: 06:00, for: 16 h }`, or remove the light");
        }

        var seen = new HashSet<int>();
        foreach (var one in schedule.Lights?.OfTiers ?? [])
        {
            if (one.Tier > rack.Tiers.Length)
            {
                complaints.Refuse(
                    one.TierPlace, $"a light on tier {one.Tier}, which is not there",
                    $"the rack has tiers 1 to {rack.Tiers.Length}");
            }
            else if (!rack.Tiers[one.Tier - 1].HasLight)
            {
                complaints.Refuse(
                    one.TierPlace, $"tier {one.Tier} has no light to switch", "give the tier a `light`, or remove this entry");
            }

            if (!seen.Add(one.Tier))
            {
                complaints.Refuse(one.TierPlace, $"tier {one.Tier} stands here twice", "keep one of them");
            }
        }

        if (schedule.Lights is { } lights && lights.Stagger * rack.Tiers.Length >= Duration.FromDays(1))
        {
            complaints.Refuse(lights.Place, "a stagger of more than a day in all", "write a shorter `stagger`");
        }
    }
}
