using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One sensor between the truth and the reading: holds what its faults do to it. Without a fault the truth passes unchanged.
/// </summary>
internal sealed class SensorChannel
{
    private readonly Sensor sensor;
    private readonly ulong seed;
    private readonly List<Fault> faults = [];
    private Reading last;
    private double followed;
    private MonotonicTime movedAt;

    public SensorChannel(Sensor sensor, PlantStart start)
    {
        this.sensor = sensor;
        seed = start.Seed;
        last = new Reading(0, ReadingQuality.Missing, start.At);
        movedAt = start.At;
    }

    /// <summary>Forgets all faults.</summary>
    public void ClearFaults() => faults.Clear();

    /// <summary>Takes a fault that acts now.</summary>
    public void AddFault(Fault fault) => faults.Add(fault);

    /// <summary>Follows the truth from moment to moment, for faults that remember.</summary>
    /// <param name="truth">The true value now.</param>
    /// <param name="now">The time now.</param>
    public void Follow(double truth, MonotonicTime now)
    {
        if (truth != followed)
        {
            followed = truth;
            movedAt = now;
        }
    }

    /// <summary>When a slow float will show what the water already did; <see cref="MonotonicTime.Never"/> for any other.</summary>
    public MonotonicTime ShowsAt
    {
        get
        {
            foreach (var fault in faults)
            {
                if (fault.Kind == FaultKind.FloatSlow && last.Value != followed)
                {
                    return movedAt + Duration.FromSeconds(fault.Size);
                }
            }

            return MonotonicTime.Never;
        }
    }

    /// <summary>How long it keeps still by its faults alone: a chattering float may change whenever a stretch ends.</summary>
    /// <param name="now">The time now.</param>
    public Duration StillFor(MonotonicTime now)
    {
        foreach (var fault in faults)
        {
            if (fault.Kind == FaultKind.FloatChattering)
            {
                var endNs = (Stretch(fault, now) + 1) * StretchNs(fault);
                return Duration.FromNanoseconds(Math.Ceiling(endNs - now.Nanoseconds));
            }
        }

        return Duration.MaxValue;
    }

    /// <summary>What the sensor says.</summary>
    /// <param name="truth">The true value.</param>
    /// <param name="takenAt">When it was true.</param>
    /// <param name="now">The time now.</param>
    public Reading Say(double truth, MonotonicTime takenAt, MonotonicTime now)
    {
        var said = new Reading(truth, ReadingQuality.Good, takenAt);
        foreach (var fault in faults)
        {
            said = Distort(said, fault, now);
        }

        last = said;
        return said;
    }

    private Reading Distort(Reading said, Fault fault, MonotonicTime now) => fault.Kind switch
    {
        FaultKind.FloatStuckWet => said with { Value = 1 },
        FaultKind.FloatStuckDry => said with { Value = 0 },
        FaultKind.FloatSlow => now < movedAt + Duration.FromSeconds(fault.Size) ? said with { Value = last.Value } : said,
        FaultKind.FloatChattering => said with { Value = Chatter(fault, now) },
        FaultKind.SensorNoise => said with
        {
            Value = said.Value + fault.Size * SeededScatter.Normal(seed, sensor.Id.Index, said.TakenAt.Nanoseconds),
        },
        FaultKind.SensorDrift => said with { Value = said.Value + fault.Size * (said.TakenAt - fault.From).TotalHours },
        FaultKind.SensorDropout => last,
        FaultKind.SensorFrozen => said with { Value = last.Value },
        FaultKind.SensorCorrupt => said with { Quality = ReadingQuality.Corrupt },
        _ => said,
    };

    // Each stretch of time falls to one side or the other, so a change comes every second stretch on average.
    private double Chatter(Fault fault, MonotonicTime now) => SeededScatter.Bits(seed, sensor.Id.Index, Stretch(fault, now)) & 1;

    private static long Stretch(Fault fault, MonotonicTime now) => (long)(now.Nanoseconds / StretchNs(fault));

    private static double StretchNs(Fault fault) => fault.Size * 1e9 / 2;
}
