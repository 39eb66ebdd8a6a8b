using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Benchmarks;

/// <summary>A controller on a site where nothing happens, ten minutes after its start. Its clock goes on by a microsecond from
/// scan to scan, so that millions of scans come to no flood.</summary>
internal sealed class SteadyRack : IEventSink
{
    private readonly Site site;
    private readonly RackControl control;
    private readonly Readings readings;
    private bool grows;
    private Moment now = new(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 1, 0), WallTrusted: true);

    public SteadyRack(Site site)
    {
        this.site = site;
        readings = new Readings(site);
        foreach (var sensor in site.Sensors)
        {
            var value = 1 - sensor.HarmfulValue ?? (sensor.PlausibleMin + sensor.PlausibleMax) / 2;
            readings[sensor.Id] = new Reading(value, ReadingQuality.Good, now.Monotonic);
        }

        control = new RackControl(site, now, memory: null);
        for (var scan = 0; scan < 6_000; scan++)
        {
            Scan(Duration.FromMilliseconds(100));
        }
    }

    public void Take(ControlEvent happened)
    {
    }

    /// <summary>One scan, with the sensors saying anew what they said.</summary>
    public RelayCommands Scan() => Scan(Duration.FromNanoseconds(1_000));

    /// <summary>One scan at which every level and flow has moved a little.</summary>
    public RelayCommands ScanMoving()
    {
        grows = !grows;
        foreach (var sensor in site.Sensors)
        {
            ref var reading = ref readings[sensor.Id];
            reading = sensor.IsContact ? reading : reading with { Value = reading.Value + (grows ? 1e-3 : -1e-3) };
        }

        return Scan();
    }

    private RelayCommands Scan(Duration later)
    {
        now = now with { Monotonic = now.Monotonic + later, Wall = now.Wall + later };
        foreach (var sensor in site.Sensors)
        {
            ref var reading = ref readings[sensor.Id];
            reading = reading with { TakenAt = now.Monotonic };
        }

        return control.Scan(now, readings, ScanConditions.Good, [], this);
    }
}
