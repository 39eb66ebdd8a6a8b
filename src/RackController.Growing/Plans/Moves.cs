using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>Trays that are carried from one tier to another.</summary>
/// <param name="Date">On which day.</param>
/// <param name="From">Place of the tier that they leave.</param>
/// <param name="To">Place of the tier that they come to.</param>
/// <param name="Trays">How many insert trays.</param>
public sealed record TrayMove(LocalDate Date, int From, int To, int Trays);

/// <summary>Finds what is carried, from where trays stand.</summary>
public static class Moves
{
    /// <summary>The moves of a batch between its first day in the light and its harvest; for one that grows already, also those of the
    /// plan's first day, from the tier on which it is said to stand.</summary>
    /// <param name="planned">The batch.</param>
    /// <param name="request">What its plan was made from.</param>
    public static ImmutableArray<TrayMove> Of(PlannedBatch planned, PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(request);
        var stood = Stood(planned.Batch, request.Space);
        var moves = ImmutableArray.CreateBuilder<TrayMove>();
        var days = planned.Stays.Select(stay => stay.From)
            .Where(day => day > planned.Timing.Lit || (stood.Count > 0 && day == request.Today))
            .Distinct().Order();
        foreach (var day in days)
        {
            var before = day == request.Today ? stood : TraysOn(planned, day.PlusDays(-1));
            var after = TraysOn(planned, day);
            var left = before.Where(one => one.Value > after.GetValueOrDefault(one.Key))
                .Select(one => (Tier: one.Key, Trays: one.Value - after.GetValueOrDefault(one.Key))).OrderBy(one => one.Tier).ToList();
            foreach (var (tier, count) in after.OrderBy(one => one.Key))
            {
                var come = count - before.GetValueOrDefault(tier);
                while (come > 0 && left.Count > 0)
                {
                    var carried = Math.Min(come, left[0].Trays);
                    moves.Add(new TrayMove(day, left[0].Tier, tier, carried));
                    come -= carried;
                    left[0] = (left[0].Tier, left[0].Trays - carried);
                    if (left[0].Trays == 0)
                    {
                        left.RemoveAt(0);
                    }
                }
            }
        }

        return moves.ToImmutable();
    }

    private static Dictionary<int, int> Stood(Batch batch, GrowSpace space) => space.Tiers.Index()
        .Where(tier => tier.Item.Name == batch.UnderWay?.Tier)
        .ToDictionary(tier => tier.Index, _ => batch.Trays);

    private static Dictionary<int, int> TraysOn(PlannedBatch planned, LocalDate day) => planned.Stays
        .Where(stay => stay.From <= day && day < stay.Until)
        .GroupBy(stay => stay.Tier)
        .ToDictionary(group => group.Key, group => group.Sum(stay => stay.Trays));
}
