using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Whether every tray in use that has a full float or a level reads full. A tray without either is passed over; an
/// unknown reading counts as not full, because then the fill's time limit still ends it.</summary>
internal sealed class FullTrays
{
    private readonly double fullDepthMm;
    private readonly ImmutableArray<Sensor> sensors;

    public FullTrays(Site site, Rack rack, double fullDepthMm)
    {
        this.fullDepthMm = fullDepthMm;
        sensors =
        [
            .. site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.TierNumber is not null
                && sensor.Kind is SensorKind.TrayFullFloat or SensorKind.TrayLevel),
        ];
    }

    /// <summary>Every value of a level sensor at which the answer may change.</summary>
    public ImmutableArray<SensorLevel> Levels =>
    [
        .. sensors.Where(sensor => sensor.Kind == SensorKind.TrayLevel).Select(sensor => new SensorLevel(sensor.Id, fullDepthMm)),
    ];

    public bool AllFull(Facts facts, TiersInUse tiers)
    {
        var anyJudged = false;
        foreach (var sensor in sensors)
        {
            var tier = sensor.TierNumber!.Value;
            if (!tiers[tier])
            {
                continue;
            }

            anyJudged = true;
            if (!ReadsFull(facts, tier))
            {
                return false;
            }
        }

        return anyJudged;
    }

    private bool ReadsFull(Facts facts, int tier)
    {
        foreach (var sensor in sensors)
        {
            if (sensor.TierNumber == tier && facts.IsKnown(sensor.Id)
                && (sensor.Kind == SensorKind.TrayLevel ? !facts.IsBelow(sensor.Id, fullDepthMm) : facts.IsClosed(sensor.Id)))
            {
                return true;
            }
        }

        return false;
    }
}
