using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>Every way in which the days of a batch can lie.</summary>
public static class BatchTimings
{
    /// <summary>All that the crop, the work days and today allow, the latest sowing first; empty where there is none.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="work">On which weekdays somebody works.</param>
    /// <param name="today">The first day of the plan; what is before it has happened or never will.</param>
    public static ImmutableArray<BatchTiming> Of(Batch batch, WorkDays work, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(batch);
        var found = new List<BatchTiming>();
        for (var harvest = batch.Due; harvest >= batch.EarliestHarvest; harvest = harvest.PlusDays(-1))
        {
            if (harvest >= today && work.Has(harvest))
            {
                found.AddRange(StageStarts(batch.Crop, harvest, []).SelectMany(starts => Sowings(batch.Crop, starts, harvest)));
            }
        }

        return
        [
            .. found.Where(timing => batch.UnderWay is { } known
                    ? IsTrue(timing, known, work, today)
                    : IsWorkable(timing, batch.Crop, work, today))
                .OrderByDescending(timing => timing.Sow).ThenByDescending(timing => timing.Harvest)
                .ThenByDescending(timing => timing.Lit),
        ];
    }

    // Backward from the harvest: the starts of the last stages are known, and the one before them is tried at every length.
    private static IEnumerable<ImmutableArray<LocalDate>> StageStarts(Crop crop, LocalDate end, ImmutableArray<LocalDate> later)
    {
        var left = crop.LitStages.Length - later.Length;
        if (left == 0)
        {
            return [later];
        }

        var days = crop.LitStages[left - 1].Days;
        return Enumerable.Range(days.Least, days.Most - days.Least + 1)
            .Select(length => end.PlusDays(-length))
            .SelectMany(start => StageStarts(crop, start, [start, .. later]));
    }

    private static IEnumerable<BatchTiming> Sowings(Crop crop, ImmutableArray<LocalDate> starts, LocalDate harvest) =>
        Enumerable.Range(crop.DarkDays.Least, crop.DarkDays.Most - crop.DarkDays.Least + 1)
            .Select(dark => new BatchTiming(starts[0].PlusDays(-dark), starts, harvest));

    private static bool IsWorkable(BatchTiming timing, Crop crop, WorkDays work, LocalDate today)
    {
        var begin = crop.IsSoaked ? timing.Sow.PlusDays(-1) : timing.Sow;
        return begin >= today && work.Has(begin) && work.Has(timing.Sow) && timing.StageStarts.All(work.Has);
    }

    // What has happened is as it was told; what is to come is on a work day.
    private static bool IsTrue(BatchTiming timing, UnderWay known, WorkDays work, LocalDate today) =>
        timing.Sow == known.Sown
        && (known.Lit is { } lit ? timing.Lit == lit : timing.Lit >= today)
        && timing.StageStarts.All(start => start < today || work.Has(start));
}
