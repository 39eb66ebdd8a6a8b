using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What a rack's sensors say together that none says alone: whether a fill is seen, and who has stood still although
/// something must have moved it.</summary>
internal sealed class RackSenses
{
    private static readonly Duration airMovesWithin = Duration.FromHours(1);
    private static readonly Duration waterMovesWithin = Duration.FromHours(24);

    private readonly FillWatch fill;
    private readonly ImmutableArray<Load> lights;
    private readonly ImmutableDictionary<SensorId, ReadingDoubt> doubtOf;
    private readonly ImmutableArray<ReadingDoubt> doubts;
    private readonly ImmutableArray<Still> stills;
    private ulong lightsBefore;
    private Facts? now;

    public RackSenses(Site site, Rack rack, MonotonicTime start, ICollection<SensorLevel> levels)
    {
        var own = site.Sensors.Where(sensor => sensor.Rack == rack.Id && !sensor.IsContact).ToImmutableArray();
        doubtOf = own.ToImmutableDictionary(sensor => sensor.Id, sensor => new ReadingDoubt(sensor.Id));
        doubts = [.. own.Select(sensor => doubtOf[sensor.Id])];
        fill = new FillWatch(site, rack, start, levels, (sensor, words) => doubtOf[sensor].Begin(now!, words));
        lights = [.. site.Loads.Where(load => load.Rack == rack.Id && load.Kind == LoadKind.Light)];
        stills = [.. own.Select(sensor => StillOf(sensor, start)).OfType<Still>()];
    }

    /// <summary>What is seen of the water that the pump moves, or moved when it last ran.</summary>
    public FillSight Fill => fill.Sight;

    /// <summary>Looks at the rack once in a scan.</summary>
    public void Look(Facts facts, Agenda agenda)
    {
        now = facts;
        fill.Look(facts, agenda);
        LookAtStills(facts, agenda);
        foreach (var doubt in doubts)
        {
            doubt.Look(facts, agenda);
        }
    }

    private void LookAtStills(Facts facts, Agenda agenda)
    {
        var lightsNow = 0UL;
        for (var i = 0; i < lights.Length; i++)
        {
            lightsNow |= facts.WasOn(lights[i].Id) ? 1UL << i : 0;
        }

        var switched = lightsNow ^ lightsBefore;
        lightsBefore = lightsNow;
        foreach (var still in stills)
        {
            still.Reading.Look(facts, (switched & still.StirredBy) != 0, agenda);
        }
    }

    private Still? StillOf(Sensor sensor, MonotonicTime start)
    {
        var isWater = sensor.Kind == SensorKind.WaterTemperature;
        if (!isWater && sensor.Kind is not (SensorKind.AirTemperature or SensorKind.AirHumidity))
        {
            return null;
        }

        var stirredBy = 0UL;
        for (var i = 0; i < lights.Length; i++)
        {
            stirredBy |= sensor.TierNumber is null || lights[i].TierNumber == sensor.TierNumber ? 1UL << i : 0;
        }

        var reading = new StillReading(sensor, isWater ? waterMovesWithin : airMovesWithin, doubtOf[sensor.Id], start);
        return new Still(reading, stirredBy);
    }

    /// <summary>A slow sensor, and a bit for each light that moves what it measures.</summary>
    private sealed record Still(StillReading Reading, ulong StirredBy);
}
