using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>Writes into a journal floods of the demo rack that has full floats and valves, as its simulated rack would have had
/// them.</summary>
internal static class TimedPast
{
    public const string RackFile = "demo-full-floats.yaml";

    private static readonly Duration apart = Duration.FromHours(4);

    /// <summary>What prepares a folder with floods every four hours.</summary>
    /// <param name="resting">Of each flood, oldest first, the tiers that took no part.</param>
    public static Action<StateFolder> OfFloods(params int[][] resting) => folder =>
    {
        var site = RackFileReader.Read(ShippedFiles.PathTo($"config/{RackFile}")).Site!;
        var now = SystemClock.Instance.GetCurrentInstant();
        using var file = JournalFile.Open(folder.Journal);
        foreach (var (at, tiers) in resting.Index())
        {
            var begin = now - apart * (resting.Length - at);
            var times = TimesOf(site.Racks[0], tiers, out var run);
            file.WriteLasting([new JournalEntry([.. EventsOf(site, begin, tiers, run.PumpRan)], null)], [], file.Run);
            file.WriteQuietly(null, [.. SamplesOf(site, begin, run.PumpRan, times).OrderBy(sample => sample.Wall)], [], file.Run);
        }
    };

    private static IEnumerable<(int Tier, double FullS, double EmptyS)> TimesOf(Rack rack, int[] resting, out FloodRun run)
    {
        run = new FloodRun(
            rack.Schedule.Floods.Fill.Limit + rack.Schedule.Floods.Soak, rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2)
        {
            Resting = TierSet.Of(resting),
        };
        ImmutableArray<int> tiers = [.. rack.Tiers.Select(tier => tier.Number).Except(resting)];
        var passed = FloodTiming.Of(
            rack, run,
            [
                .. tiers.Select(tier => new FloodMark(tier, FloodPassing.Rising, 40)),
                .. tiers.Select(tier => new FloodMark(tier, FloodPassing.Falling, 40)),
            ]);
        return tiers.Select((tier, index) => (tier, passed[index]!.Value, passed[tiers.Length + index]!.Value));
    }

    private static IEnumerable<ControlEvent> EventsOf(Site site, Instant begin, int[] resting, Duration ran)
    {
        var rack = site.Racks[0];
        var valves = rack.Tiers.Where(tier => !resting.Contains(tier.Number)).Select(tier => site[tier.Valve!.Value].Name).ToList();
        var fill = begin + rack.Schedule.Floods.Fill.Limit;
        yield return At(begin - Duration.FromSeconds(20), EventKind.Flood, rack.Name, FloodEvent.Due);
        foreach (var valve in valves)
        {
            yield return At(begin - Duration.FromSeconds(15), EventKind.Load, valve, "on");
        }

        yield return At(begin, EventKind.Flood, rack.Name, FloodEvent.Filling);
        yield return At(fill, EventKind.Flood, rack.Name, FloodEvent.Soaking);
        yield return At(begin + ran, EventKind.Flood, rack.Name, FloodEvent.Draining);
        foreach (var valve in valves)
        {
            yield return At(begin + ran, EventKind.Load, valve, "off");
        }

        yield return At(begin + ran + rack.Schedule.Floods.Drain, EventKind.Flood, rack.Name, FloodEvent.Drained);
    }

    private static IEnumerable<Sample> SamplesOf(
        Site site, Instant begin, Duration ran, IEnumerable<(int Tier, double FullS, double EmptyS)> times)
    {
        string NameOf(int tier) =>
            site.Sensors.Single(sensor => sensor.Kind == SensorKind.TrayFullFloat && sensor.TierNumber == tier).Name;
        foreach (var (tier, fullS, emptyS) in times)
        {
            yield return new Sample(begin - Duration.FromMinutes(1), NameOf(tier), 0);
            yield return new Sample(begin + Duration.FromSeconds(fullS), NameOf(tier), 1);
            yield return new Sample(begin + ran + Duration.FromSeconds(emptyS), NameOf(tier), 0);
        }
    }

    private static ControlEvent At(Instant at, EventKind kind, string subject, string what) =>
        new(new Moment(MonotonicTime.Zero, at, true), kind, subject, what, "of a test");
}
