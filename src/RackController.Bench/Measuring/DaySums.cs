using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Adds up the whole days of a run.</summary>
internal sealed class DaySums(Site site)
{
    private readonly Duration[] powered = new Duration[site.Loads.Length];
    private int count;

    /// <summary>Counts a day.</summary>
    public void Count(DayTotals day)
    {
        count++;
        for (var load = 0; load < powered.Length; load++)
        {
            powered[load] += day.PoweredByLoad[load];
        }
    }

    /// <summary>Light of a tier on an average day.</summary>
    public TierLight Light(Tier tier)
    {
        if (count == 0)
        {
            return new TierLight(tier.Number, null, null);
        }

        var lit = tier.Light is { } light ? powered[light.Index] / count : Duration.Zero;
        return new TierLight(tier.Number, lit.TotalHours, DailyLight.MolPerM2(tier.PpfdUmolPerM2S, lit));
    }
}
