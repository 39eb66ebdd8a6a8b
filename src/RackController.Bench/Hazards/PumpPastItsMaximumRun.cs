using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A pump that runs on past the longest run that the rack file allows: trays overflow and motors burn. One that was told off and
/// runs all the same may do so until the time relay in its wire, where there is one, must have opened.</summary>
internal sealed class PumpPastItsMaximumRun : IHazardWatch
{
    /// <summary>What a scan and its relay need to act.</summary>
    private static readonly Duration tolerance = Duration.FromSeconds(1);

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var rack in now.Site.Racks)
        {
            var run = now.PoweredFor(rack.Pump.Load);
            if ((run > Duration.Zero || now.IsPowered(rack.Pump.Load))
                && now.IsLongerSince(now.Elapsed - run, Longest(rack, now) + tolerance))
            {
                book.Report(
                    now, HazardKind.PumpPastItsMaximumRun, now.Site[rack.Pump.Load].Name,
                    Vicinity.OfLoad(now.Site, rack.Pump.Load),
                    $"{now.Site[rack.Pump.Load].Name} ran on past its maximum of {Spans.Words(rack.Limits.PumpMaximumRun)}"
                        + Although(rack, now));
            }
        }
    }

    private static string Although(Rack rack, IObserved now) =>
        now.IsTold(rack.Pump.Load) ? ""
        : rack.TimeCutout is { After: var after } ? $", although it was told to be off, and past the {Spans.Words(after)} of its time relay"
        : ", although it was told to be off";

    private static Duration Longest(Rack rack, IObserved now) => rack.TimeCutout is { After: var after } && !now.IsTold(rack.Pump.Load)
        ? Duration.Max(after, rack.Limits.PumpMaximumRun)
        : rack.Limits.PumpMaximumRun;
}
