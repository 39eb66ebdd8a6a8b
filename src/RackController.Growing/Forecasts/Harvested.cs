using NodaTime;

namespace RackController.Growing;

/// <summary>What is harvested of one crop.</summary>
/// <param name="Crop">Its name.</param>
/// <param name="LiveTrays">Insert trays that leave alive.</param>
/// <param name="CutTrays">Insert trays that are cut.</param>
/// <param name="CutG">What those give, g, by the crop's yield.</param>
public sealed record Harvested(string Crop, int LiveTrays, int CutTrays, double CutG)
{
    /// <summary>In words: <c>3 trays of radish, 960 g</c>.</summary>
    public string Words => string.Join(", ", Parts);

    /// <summary>What a plan harvests on a day, by the name of the crop.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="date">The day.</param>
    public static IEnumerable<Harvested> On(Plan plan, LocalDate date)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Together(plan.Batches.Where(one => one.Timing.Harvest == date).Select(one => one.Batch).Select(batch => batch.IsLive
            ? new Harvested(batch.Crop.Name, batch.Trays, 0, 0)
            : new Harvested(batch.Crop.Name, 0, batch.Trays, batch.Trays * batch.Crop.YieldGPerTray)));
    }

    /// <summary>The same with each crop once.</summary>
    /// <param name="all">What is harvested.</param>
    public static IEnumerable<Harvested> Together(IEnumerable<Harvested> all) => all
        .GroupBy(one => one.Crop).OrderBy(crop => crop.Key, StringComparer.Ordinal)
        .Select(crop => new Harvested(
            crop.Key, crop.Sum(one => one.LiveTrays), crop.Sum(one => one.CutTrays), crop.Sum(one => one.CutG)));

    private IEnumerable<string> Parts
    {
        get
        {
            if (CutTrays > 0)
            {
                yield return $"{new LiveTrays(CutTrays).Words} of {Crop} cut, {new CutWeight(CutG).Words}";
            }

            if (LiveTrays > 0)
            {
                yield return $"{new LiveTrays(LiveTrays).Words} of {Crop}";
            }
        }
    }
}
