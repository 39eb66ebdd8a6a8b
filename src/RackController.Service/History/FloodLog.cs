using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>Finds the floods of one rack in what happened and what its sensors said.</summary>
/// <param name="site">The site.</param>
/// <param name="rack">The rack.</param>
public sealed class FloodLog(Site site, Rack rack)
{
    // A level from longer before a flood says nothing of it.
    private static readonly Duration youngEnough = Duration.FromMinutes(5);

    private readonly string? level = NameOf(site, rack, SensorKind.ReservoirLevel, null);

    private readonly ImmutableArray<(int Tier, string? Float)> floats =
        [.. rack.Tiers.Select(tier => (tier.Number, NameOf(site, rack, SensorKind.TrayFullFloat, tier.Number)))];

    private readonly ImmutableDictionary<string, int> valves = rack.Tiers.Where(tier => tier.Valve is not null)
        .ToImmutableDictionary(tier => site[tier.Valve!.Value].Name, tier => tier.Number);

    /// <summary>What would have to be measured so that the log could tell more, in sentences; empty when nothing.</summary>
    public IEnumerable<string> Lacking()
    {
        var blind = floats.Where(tier => tier.Float is null).Select(tier => tier.Tier).ToList();
        if (blind.Count > 0)
        {
            var which = blind.Count == rack.Tiers.Length ? "No tier" : $"Not every tier ({string.Join(", ", blind)})";
            yield return $"{which} has a float at its flood depth: one on each would time how fast it fills and drains.";
        }

        if (level is null)
        {
            yield return "The reservoir has no level sensor: one would tell how much water a flood takes.";
        }
    }

    /// <summary>Reads the floods of a span, oldest first.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="span">The span.</param>
    /// <param name="unwritten">What sensors said that is not in the journal yet.</param>
    public ImmutableArray<FloodRecord> Read(JournalHistory journal, HistorySpan span, IReadOnlyList<Sample> unwritten)
    {
        ArgumentNullException.ThrowIfNull(journal);
        var names = floats.Select(tier => tier.Float).Append(level).OfType<string>().ToHashSet();
        var samples = names.Count == 0
            ? []
            : journal.SamplesIn(span).Where(sample => names.Contains(sample.Sensor)).Reverse().Concat(unwritten);

        // Switchings are many, and only valves tell anything here.
        var events = valves.IsEmpty
            ? journal.EventsIn(span, EventKind.Flood)
            : journal.EventsIn(span, EventKind.Flood, EventKind.Load, EventKind.Controller);
        return Of([.. events.Select(kept => kept.Event).Where(IsOfFloods).Reverse()], samples);
    }

    /// <summary>Finds floods.</summary>
    /// <param name="events">The events of floods of this rack, oldest first, with the switchings of its valves and the starts of the
    /// controller among them.</param>
    /// <param name="samples">What sensors said, oldest first.</param>
    public ImmutableArray<FloodRecord> Of(IReadOnlyList<ControlEvent> events, IEnumerable<Sample> samples)
    {
        ArgumentNullException.ThrowIfNull(events);
        var said = samples.Where(sample => sample.Value is not null).ToLookup(sample => sample.Sensor);
        var byName = said.ToDictionary(sensor => sensor.Key, sensor => sensor.Select(at => (at.Wall, Value: at.Value!.Value)).ToList());
        return [.. FloodPhases.Of(events, valves).Select(phases => Record(phases, byName))];
    }

    private bool IsOfFloods(ControlEvent happened) => happened.Kind switch
    {
        EventKind.Flood => happened.Subject == rack.Name,
        EventKind.Load => valves.ContainsKey(happened.Subject),
        _ => true,
    };

    private static string? NameOf(Site site, Rack rack, SensorKind kind, int? tier) =>
        site.Sensors.FirstOrDefault(sensor => sensor.Rack == rack.Id && sensor.Kind == kind && sensor.TierNumber == tier)?.Name;

    private FloodRecord Record(FloodPhases phases, Dictionary<string, List<(Instant At, double Value)>> said)
    {
        var isCut = phases.CutShort is not null;
        return new FloodRecord(
            phases.Filling, phases.Why, phases.Soaking - phases.Filling,
            isCut ? null : phases.Draining - phases.Soaking, phases.CutShort, Volume(phases, said),
            [
                .. floats.Where(tier => tier.Float is not null && said.ContainsKey(tier.Float))
                    .Select(tier => Tier(tier.Tier, phases, said[tier.Float!])),
            ])
        {
            ReservoirMm = LevelBefore(phases, said),
            Resting = phases.Resting,
        };
    }

    private TierFlood Tier(int number, FloodPhases phases, List<(Instant At, double Value)> said)
    {
        var end = phases.Filling + rack.Schedule.Floods.LongestCycle;
        var full = FirstAfter(said, phases.Filling, phases.Draining ?? end, isFull: true);
        var empty = phases.Draining is { } draining && full is not null
            ? FirstAfter(said, draining, draining + rack.Schedule.Floods.Drain, isFull: false) - draining
            : null;
        return new TierFlood(number, full - phases.Filling, empty);
    }

    private static Instant? FirstAfter(List<(Instant At, double Value)> said, Instant from, Instant until, bool isFull)
    {
        for (var at = FirstNotBefore(said, from); at < said.Count && said[at].At <= until; at++)
        {
            if (said[at].Value >= 0.5 == isFull)
            {
                return said[at].At;
            }
        }

        return null;
    }

    private double? LevelBefore(FloodPhases phases, Dictionary<string, List<(Instant At, double Value)>> said)
    {
        if (level is null || !said.TryGetValue(level, out var levels))
        {
            return null;
        }

        var first = FirstNotBefore(levels, phases.Filling);
        return first == 0 || phases.Filling - levels[first - 1].At > youngEnough ? null : levels[first - 1].Value;
    }

    private double? Volume(FloodPhases phases, Dictionary<string, List<(Instant At, double Value)>> said)
    {
        if (LevelBefore(phases, said) is not { } before || phases.Draining is not { } draining)
        {
            return null;
        }

        var levels = said[level!];
        var during = levels.Skip(FirstNotBefore(levels, phases.Filling)).TakeWhile(at => at.At <= draining + youngEnough)
            .Select(at => at.Value).ToList();
        return during.Count == 0 ? null : Math.Max(0, before - during.Min()) * rack.Reservoir.AreaM2;
    }

    private static int FirstNotBefore(List<(Instant At, double Value)> said, Instant from)
    {
        var (low, high) = (0, said.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = said[middle].At < from ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
