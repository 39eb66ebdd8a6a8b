using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>One tray in one place of a tier for a while.</summary>
/// <param name="Batch">Its batch.</param>
/// <param name="Tier">The tier.</param>
/// <param name="Strip">The place, from 0.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The day on which it leaves.</param>
internal sealed record StripBar(PlannedBatch Batch, int Tier, int Strip, LocalDate From, LocalDate Until);

/// <summary>Gives every tray of a plan a place of its own on its tier, so that it can be drawn. People may put it elsewhere.</summary>
internal static class Strips
{
    /// <summary>The bars of a plan.</summary>
    /// <param name="plan">The plan.</param>
    public static IEnumerable<StripBar> Of(Plan plan)
    {
        var freeFrom = plan.Request.Space.Tiers.Select(tier => new LocalDate[tier.Kind.Places]).ToArray();
        var stays = plan.Batches.SelectMany(batch => batch.Stays.Select(stay => (Batch: batch, Stay: stay)))
            .OrderBy(one => one.Stay.From).ThenByDescending(one => one.Stay.Until);
        foreach (var (batch, stay) in stays)
        {
            var strips = freeFrom[stay.Tier];
            for (var tray = 0; tray < stay.Trays; tray++)
            {
                var strip = Array.FindIndex(strips, from => from <= stay.From);
                strips[strip] = stay.Until;
                yield return new StripBar(batch, stay.Tier, strip, stay.From, stay.Until);
            }
        }
    }
}
