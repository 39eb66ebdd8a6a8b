using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Cli.Tests.Live;

/// <summary>Pictures of the demo racks, made up for a test.</summary>
internal static class Pictures
{
    private static readonly Moment Now = new(MonotonicTime.FromMilliseconds(60_000), Instant.FromUtc(2026, 6, 1, 12, 0), true);

    public static Site DemoSite(string file) => RackFileReader.Read(Path.Combine(Repository(), "config", file)).Site!;

    /// <summary>A calm site: every reading good, nothing wrong.</summary>
    public static SiteStatus Calm(Site site) => new(
        Now,
        [.. site.Loads.Select(load => new LoadWhy(
            load.Id, load.SafeState, "it runs always", [], "admitted", "no flood is due until 13:00 on this rack"))],
        [.. site.Sensors.Select(sensor => new SensorStatus(
            sensor, new Reading(WellValue(sensor), ReadingQuality.Good, Now.Monotonic), Duration.Zero, null))],
        [.. site.Racks.Select(_ => FloodPhase.Idle)],
        [.. site.Racks.Select(rack => rack.Tiers.Select(_ => true).ToImmutableArray())],
        [.. site.Racks.Select(_ => new RackAsked(false, null, false))],
        [.. site.Racks.Select(_ => new FloodOutlook([], [], Duration.FromMinutes(10), Duration.FromMinutes(20)))],
        [.. site.Loads.Select(load => new DueNext(load.Name, "on", Now.Wall + Duration.FromHours(1)))],
        [],
        new RackControl(site, Now, memory: null).ProofTests(),
        null,
        [.. Enumerable.Range(0, 50).Select(number => new ControlEvent(
            Now, EventKind.Load, site.Loads[0].Name, "off", $"event number {number} was long ago and has a long reason"))],
        new ScanHealth(600, 0, Duration.FromMilliseconds(0.4), new ScanLateness([], [600], Duration.Zero), null));

    public static Alarm Alarm(string key, AlarmPriority priority, AlarmState state) => new(
        key, priority, state, Now, "water stands above the standpipe of tier 2", "water reaches the floor",
        "look for the blocked drain", "at once");

    private static double WellValue(Sensor sensor) =>
        sensor.Kind is SensorKind.ReservoirLowFloat or SensorKind.SupplySense ? 1 : 0;

    private static string Repository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "RackController.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("RackController.sln is in no folder above the tests");
        }

        return folder.FullName;
    }
}
