using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A light that stays on above the temperature at which it should be off. A sensor lags behind the air, so a
/// minute is forgiven.</summary>
internal sealed class LightsInTheHeat(Site site) : IHazardWatch
{
    private static readonly Duration Forgiven = Duration.FromMinutes(1);
    private readonly Lasting hot = new(site.Loads.Length, Forgiven);
    private readonly ImmutableArray<(Rack Rack, Tier Tier, LoadId Light)> lights =
    [
        .. from rack in site.Racks
           from tier in rack.Tiers
           where tier.Light is not null
           select (rack, tier, tier.Light!.Value),
    ];

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var (rack, tier, light) in lights)
        {
            LookAt(now, book, rack, tier, light);
        }
    }

    private void LookAt(IObserved now, HazardBook book, Rack rack, Tier tier, LoadId light)
    {
        var isHot = now.IsPowered(light) && now.AirC(rack.Id, tier.Number) > rack.Limits.AirHotC;
        if (hot.IsTooLong(light.Index, isHot, now))
        {
            book.Report(
                now, HazardKind.LightsInTheHeat, now.Site[light].Name, Vicinity.OfLoad(now.Site, light),
                $"{now.Site[light].Name} had been on for {Spans.Words(Forgiven)} above {rack.Limits.AirHotC:0.#} C: "
                    + $"the air was {now.AirC(rack.Id, tier.Number):0.0} C");
        }
    }
}
