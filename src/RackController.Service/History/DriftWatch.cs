using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>Looks once a day whether a rack still floods as it was fitted to, and calls for maintenance where it does not. It never acts
/// on a load.</summary>
/// <param name="site">The site.</param>
/// <param name="alarms">Who is told.</param>
internal sealed class DriftWatch(Site site, ControllerAlarms alarms)
{
    private static readonly Duration lookedAt = Duration.FromDays(30);

    /// <summary>Looks.</summary>
    /// <param name="history">The journal.</param>
    /// <param name="now">The time by a trusted wall clock.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public void Look(JournalHistory history, Instant now)
    {
        var drifts = site.Racks.Where(rack => rack.Measured is not null).SelectMany(rack =>
        {
            // What was before the rack was fitted is in the fit.
            var fitted = rack.Measured!.On.AtStartOfDayInZone(site.Zone).ToInstant();
            var span = new HistorySpan(Instant.Max(now - lookedAt, fitted), Instant.Max(now, fitted) + Duration.Epsilon);
            return FitDrift.In(site, rack, new FloodLog(site, rack).Read(history, span, [])).Select(drift => (Rack: rack, Drift: drift));
        }).ToList();
        if (drifts.Count == 0)
        {
            alarms.Clear(ControllerTrouble.RackDrifts);
            return;
        }

        var (where, what) = drifts.MaxBy(one => Math.Abs(one.Drift.Percent));
        var more = drifts.Count > 1 ? $" ({drifts.Count - 1} more on the page of floods)" : "";
        alarms.Raise(ControllerTrouble.RackDrifts, $"{where.Name}: {DriftWords.Of(what, site.Units).TrimEnd('.')}{more}");
    }
}
