using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Where the scan thread leaves a picture of the whole for whoever asked. A picture is made only when somebody wants
/// one, so that a rack nobody looks at is scanned without allocating.
/// </summary>
internal sealed class StatusBoard(ControllerAlarms controllerAlarms, RecentEvents recent, DueUpkeep upkeep)
{
    private TaskCompletionSource<SiteStatus>? asked;

    /// <summary>Asks for a picture; several askers share one.</summary>
    /// <returns>The picture, once the next scan has made it.</returns>
    public Task<SiteStatus> Ask()
    {
        var mine = new TaskCompletionSource<SiteStatus>(TaskCreationOptions.RunContinuationsAsynchronously);
        return (Interlocked.CompareExchange(ref asked, mine, null) ?? mine).Task;
    }

    /// <summary>Whether anybody waits for a picture.</summary>
    public bool IsAsked => Volatile.Read(ref asked) is not null;

    /// <summary>Makes the picture for whoever asked. The scan thread calls this after the relays moved.</summary>
    public void Show(RackControl control, in Moment now, Readings readings, ScanHealth health)
    {
        var status = Picture(control, now, readings, health);
        Interlocked.Exchange(ref asked, null)?.TrySetResult(status);
    }

    private SiteStatus Picture(RackControl control, Moment now, Readings readings, ScanHealth health) => new(
        now,
        control.Why(),
        [.. control.Site.Sensors.Select(sensor => Describe(sensor, readings[sensor.Id], now.Monotonic))],
        [.. control.Site.Racks.Select(rack => control.FloodPhase(rack.Id))],
        [.. control.Site.Racks.Select(rack => TiersInUse(control, rack))],
        [.. control.Site.Racks.Select(rack => control.Asked(rack.Id))],
        [.. control.Site.Racks.Select(rack => control.FloodOutlook(rack.Id))],
        control.DueNext(),
        [.. controllerAlarms.Active().Concat(control.Alarms()).OrderByDescending(alarm => alarm.Priority)],
        control.ProofTests(),
        control.ProofTestUnderWay(),
        recent.Newest(),
        health)
    {
        DueUpkeep = upkeep.Works,
    };

    private static ImmutableArray<bool> TiersInUse(RackControl control, Rack rack) =>
        [.. rack.Tiers.Select(tier => control.IsTierInUse(rack.Id, tier.Number))];

    private static SensorStatus Describe(Sensor sensor, Reading reading, MonotonicTime now)
    {
        var age = now - reading.TakenAt;
        return new SensorStatus(sensor, reading, age, reading.Quality switch
        {
            ReadingQuality.Missing => "missing",
            ReadingQuality.Corrupt => "corrupt",
            _ when reading.Value < sensor.PlausibleMin || reading.Value > sensor.PlausibleMax => "implausible",
            _ when age > sensor.StaleAfter => "stale",
            _ => null,
        });
    }
}
