using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A pump that draws air. Small pumps are cooled and lubricated by what they lift; half a minute without is
/// forgiven (common practice, no source).</summary>
internal sealed class PumpRunsDry(Site site) : IHazardWatch
{
    /// <summary>How long is forgiven.</summary>
    public static readonly Duration Limit = Duration.FromSeconds(30);
    private readonly Lasting dry = new(site.Racks.Length, Limit);

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var rack in now.Site.Racks)
        {
            var isDry = now.IsPowered(rack.Pump.Load)
                && now.ReservoirL(rack.Id) / rack.Reservoir.AreaM2 < rack.Reservoir.PumpIntakeMm;
            if (dry.IsTooLong(rack.Id.Index, isDry, now))
            {
                book.Report(
                    now, HazardKind.PumpRunsDry, now.Site[rack.Pump.Load].Name, Vicinity.OfLoad(now.Site, rack.Pump.Load),
                    $"{now.Site[rack.Pump.Load].Name} had run for {Spans.Words(Limit)} with its intake in air");
            }
        }
    }
}
