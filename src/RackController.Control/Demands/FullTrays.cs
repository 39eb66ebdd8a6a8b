using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Whether every tray in use that has a full float or a level reads full. A tray without either is passed over; an
/// unknown reading counts as not full, because then the fill's time limit still ends it.</summary>
internal sealed class FullTrays
{
    private readonly ImmutableArray<TraySense> senses;

    public FullTrays(Site site, Rack rack, double fullDepthMm, ICollection<SensorLevel> levels)
    {
        senses =
        [
            .. site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind is SensorKind.TrayFullFloat or SensorKind.TrayLevel)
                .Where(sensor => sensor.TierNumber is not null)
                .Select(sensor => new TraySense(
                    sensor.Id, sensor.TierNumber!.Value, sensor.IsContact ? null : new Limit(sensor.Id, fullDepthMm, levels))),
        ];
    }

    public bool AllFull(Facts facts, TiersInUse tiers)
    {
        var anyJudged = false;
        foreach (var sense in senses)
        {
            if (!tiers[sense.TierNumber])
            {
                continue;
            }

            anyJudged = true;
            if (!ReadsFull(facts, sense.TierNumber))
            {
                return false;
            }
        }

        return anyJudged;
    }

    private bool ReadsFull(Facts facts, int tier)
    {
        foreach (var sense in senses)
        {
            if (sense.TierNumber == tier && facts.IsKnown(sense.Sensor)
                && (sense.Full is { } full ? !facts.IsBelow(full) : facts.IsClosed(sense.Sensor)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What reads one tray.</summary>
    /// <param name="Sensor">Its float or level.</param>
    /// <param name="TierNumber">The tier.</param>
    /// <param name="Full">The depth at which a level reads full; null for a float.</param>
    private readonly record struct TraySense(SensorId Sensor, int TierNumber, Limit? Full);
}
