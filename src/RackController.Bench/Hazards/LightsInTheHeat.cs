using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A light that stays on above the temperature at which it should be off. A sensor lags behind the air, so a
/// minute is forgiven.</summary>
internal sealed class LightsInTheHeat(Site site) : IHazardWatch
{
    private static readonly Duration Forgiven = Duration.FromMinutes(1);
    private readonly Lasting hot = new(site.Loads.Length);

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var rack in now.Site.Racks)
        {
            foreach (var tier in rack.Tiers)
            {
                if (tier.Light is { } light)
                {
                    LookAt(now, book, rack, tier, light);
                }
            }
        }
    }

    private void LookAt(IObserved now, HazardBook book, Rack rack, Tier tier, LoadId light)
    {
        var airC = now.AirC(rack.Id, tier.Number);
        var isHot = airC > rack.Limits.AirHotC && now.IsPowered(light);
        if (hot.Count(light.Index, isHot, now.SinceBefore) > Forgiven)
        {
            book.Report(
                now, HazardKind.LightsInTheHeat, now.Site[light].Name, Vicinity.OfLoad(now.Site, light),
                $"{now.Site[light].Name} had been on for {Spans.Words(Forgiven)} above {rack.Limits.AirHotC:0.#} C: "
                    + $"the air was {airC:0.0} C");
        }
    }
}
