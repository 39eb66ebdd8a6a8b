using NodaTime;

namespace RackController.Bench;

/// <summary>A pump that runs on past the longest run that the rack file allows: trays overflow and motors burn.</summary>
internal sealed class PumpPastItsMaximumRun : IHazardWatch
{
    /// <summary>What a scan and its relay need to act.</summary>
    private static readonly Duration Tolerance = Duration.FromSeconds(1);

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var rack in now.Site.Racks)
        {
            var run = now.PoweredFor(rack.Pump.Load);
            if ((run > Duration.Zero || now.IsPowered(rack.Pump.Load))
                && now.IsLongerSince(now.Elapsed - run, rack.Limits.PumpMaximumRun + Tolerance))
            {
                book.Report(
                    now, HazardKind.PumpPastItsMaximumRun, now.Site[rack.Pump.Load].Name,
                    Vicinity.OfLoad(now.Site, rack.Pump.Load),
                    $"{now.Site[rack.Pump.Load].Name} ran on past its maximum of {Spans.Words(rack.Limits.PumpMaximumRun)}"
                        + (now.IsTold(rack.Pump.Load) ? "" : ", although it was told to be off"));
            }
        }
    }
}
