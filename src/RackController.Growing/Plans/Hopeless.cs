using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>Finds the orders that no amount of room would meet: no tier suits the crop, or no days do.</summary>
public static class Hopeless
{
    // Whoever cannot have it in a season is told so.
    private const int LookAheadDays = 120;

    /// <summary>Those orders, why, and the least that would help.</summary>
    /// <param name="request">What is asked for.</param>
    public static ImmutableArray<(Order Order, string Reason, string Remedy)> Of(PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var missing = Batching.Of(request.Orders, request.Growing, request.MarginPercent)
            .Where(batch => batch.UnderWay is null)
            .Select(batch => (batch, Trouble: TroubleOf(request, batch)))
            .Where(one => one.Trouble is not null);
        return
        [
            .. from one in missing
               from order in one.batch.Orders
               select (order, one.Trouble!.Value.Reason, one.Trouble.Value.Remedy),
        ];
    }

    private static (string Reason, string Remedy)? TroubleOf(PlanRequest request, Batch batch) =>
        WithoutTier(request.Space, batch.Crop)
        ?? (BatchTimings.Of(batch, request.Work, request.Today).IsEmpty ? WithoutDays(request, batch) : null);

    private static (string Reason, string Remedy)? WithoutTier(GrowSpace space, Crop crop)
    {
        foreach (var stage in crop.LitStages)
        {
            var misfits = space.Tiers.Select(tier => Fit.Trouble(stage, tier.Kind)).ToList();
            if (misfits.All(one => one is not null))
            {
                return misfits.Count == 0
                    ? ("no tier has a lamp and insert trays", "put one into use")
                    : ($"no tier suits it: {string.Join("; ", misfits.Select(one => one!.Reason).Distinct())}",
                        string.Join(", or ", misfits.Select(one => one!.Cure).Distinct()));
            }
        }

        return null;
    }

    private static (string Reason, string Remedy) WithoutDays(PlanRequest request, Batch batch)
    {
        var later = Enumerable.Range(1, LookAheadDays)
            .Select(days => batch.Due.PlusDays(days))
            .FirstOrDefault(due => !BatchTimings.Of(batch with { Due = due }, request.Work, request.Today).IsEmpty);
        var promise = later == default ? null : $"deliver it on {PlanDates.Day(later)}";
        var everyDay = new WorkDays([.. Enum.GetValues<IsoDayOfWeek>().Where(day => day != IsoDayOfWeek.None)]);
        if (BatchTimings.Of(batch, everyDay, request.Today).IsEmpty)
        {
            var soak = batch.Crop.IsSoaked ? " and a night in water" : "";
            return ($"it takes {batch.Crop.FewestDays} days{soak}, and the plan begins on {PlanDates.Day(request.Today)}",
                promise ?? "deliver it later, and work on more days of the week");
        }

        var helpful = everyDay.Days.Except(request.Work.Days)
            .Where(day => !BatchTimings.Of(batch, new WorkDays([.. request.Work.Days, day]), request.Today).IsEmpty)
            .ToList();
        return (
            "the days on which it would be soaked, sown, moved and harvested are not all days of work",
            helpful.Count == 0 ? $"{promise ?? "work on more days of the week"}; one more day of work is not enough"
                : $"work on {string.Join(" or ", helpful)} as well{(promise is null ? "" : $", or {promise}")}");
    }
}
