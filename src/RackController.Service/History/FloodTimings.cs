using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>The floods of one rack that the simulated rack can be compared with: run to their end, and timed by the tiers' full floats.
/// </summary>
/// <param name="site">The site.</param>
/// <param name="rack">The rack.</param>
public sealed class FloodTimings(Site site, Rack rack)
{
    /// <summary>More make a fit no surer, and a rack changes.</summary>
    private const int MostFloods = 20;

    private static readonly Duration longestAgo = Duration.FromDays(30);

    // The last tray is still draining when its flood says its last.
    private static readonly Duration afterwards = Duration.FromHours(6);

    private static readonly LocalDateTimePattern toTheMinute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    private readonly ImmutableDictionary<int, double> floatsMm = site.Sensors
        .Where(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.TrayFullFloat)
        .ToImmutableDictionary(sensor => sensor.TierNumber!.Value, sensor => sensor.HeightMm);

    /// <summary>The newest floods that can be compared, oldest first.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="since">No flood before it; null for no such limit.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public ImmutableArray<TimedFlood> Newest(JournalHistory journal, Instant? since)
    {
        ArgumentNullException.ThrowIfNull(journal);
        if (journal.EventsBackwards(EventKind.Flood).FirstOrDefault() is not { Event.At.Wall: var last })
        {
            return [];
        }

        var from = Instant.Max(last - longestAgo, since ?? Instant.MinValue);
        var span = new HistorySpan(from, Instant.Max(from, last) + afterwards);
        return [.. Of(new FloodLog(site, rack).Read(journal, span, [])).TakeLast(MostFloods)];
    }

    /// <summary>Those that can be compared.</summary>
    /// <param name="floods">The floods, oldest first.</param>
    public ImmutableArray<TimedFlood> Of(IEnumerable<FloodRecord> floods) => [.. floods.Select(Of).OfType<TimedFlood>()];

    /// <summary>One flood; null where it was cut short, goes on, nothing timed it, or nobody knows which tiers took part.</summary>
    private TimedFlood? Of(FloodRecord flood)
    {
        if (flood is not { Fill: { } fill, Soak: { } soak, Resting: { } resting })
        {
            return null;
        }

        var times = flood.Tiers.Where(tier => floatsMm.ContainsKey(tier.Number) && TakesPart(rack.Tier(tier.Number), resting))
            .SelectMany(tier => (TimedPassing?[])
            [
                Passing(tier.Number, FloodPassing.Rising, tier.FullAfter), Passing(tier.Number, FloodPassing.Falling, tier.EmptyAfter),
            ])
            .OfType<TimedPassing>().ToImmutableArray();
        var levelMm = flood.ReservoirMm ?? rack.Reservoir.NormalVolumeL / rack.Reservoir.AreaM2;
        return times.IsEmpty
            ? null
            : new TimedFlood(
                $"the flood of {toTheMinute.Format(flood.At.InZone(site.Zone).LocalDateTime)}",
                new FloodRun(fill + soak, levelMm) { Resting = resting }, times)
            {
                At = flood.At,
            };
    }

    // A valve says what was so then; without one there is what the rack file says now.
    private static bool TakesPart(Tier tier, TierSet resting) => tier.Valve is null ? tier.InUse : !resting.Contains(tier.Number);

    private TimedPassing? Passing(int tier, FloodPassing passing, Duration? after) => after is { } time && time > Duration.Zero
        ? new TimedPassing(new FloodMark(tier, passing, floatsMm[tier]), time.TotalSeconds)
        : null;
}
