using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One sensor between the truth and the reading: holds what its faults do to it. Without a fault the truth passes unchanged. What
/// it says depends on the times at which truth and faults change, never on when somebody reads it.
/// </summary>
internal sealed class SensorChannel
{
    // A scattered or drifting value is one that its electronics take anew now and then: fast ones every second, slow ones every ten.
    private static readonly Duration fastSample = Duration.FromSeconds(1);
    private static readonly Duration slowSample = Duration.FromSeconds(10);

    private readonly Sensor sensor;
    private readonly ulong seed;
    private readonly Duration samplePeriod;
    private readonly List<(Fault Fault, Reading Before)> faults = [];
    private readonly List<double> levels = [];
    private double truth;
    private MonotonicTime movedAt;
    private double shown;
    private double sampled;
    private double followed;
    private MonotonicTime nextSample = MonotonicTime.Never;

    public SensorChannel(Sensor sensor, PlantStart start)
    {
        this.sensor = sensor;
        seed = start.Seed;
        samplePeriod = SensorTruth.IsSlow(sensor.Kind) ? slowSample : fastSample;
        movedAt = start.At;
    }

    /// <summary>Names a value whose passing matters, so that a disturbance that passes it counts as news.</summary>
    public void Watch(double level) => levels.Add(level);

    /// <summary>When what it says could next change although the truth does not: a slow float shows what the water did, a chattering
    /// one begins a stretch, a disturbed value is taken anew; <see cref="MonotonicTime.Never"/> without such a fault.</summary>
    public MonotonicTime Due { get; private set; } = MonotonicTime.Never;

    /// <summary>A fault begins.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="value">The true value now.</param>
    /// <param name="now">The time now.</param>
    public void Begin(Fault fault, double value, MonotonicTime now)
    {
        // Its last word came before it fell silent.
        faults.Add((fault, Say(value, now + -Duration.Epsilon)));
        Sample(value, now);
        Follow(value, now);
    }

    /// <summary>A fault ends.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="value">The true value now.</param>
    /// <param name="now">The time now.</param>
    public void End(Fault fault, double value, MonotonicTime now)
    {
        faults.RemoveAll(entry => ReferenceEquals(entry.Fault, fault));
        Sample(value, now);
        Follow(value, now);
    }

    /// <summary>Follows the truth at a moment at which it, or the sensor, may have changed.</summary>
    /// <param name="value">The true value now.</param>
    /// <param name="now">The time now.</param>
    /// <returns>Whether a contact changed, or a disturbed value passed a level.</returns>
    public bool Follow(double value, MonotonicTime now)
    {
        value = ByHand(value);
        if (value != truth)
        {
            truth = value;
            movedAt = now;
        }

        if (now >= movedAt + Delay)
        {
            shown = truth;
        }

        if (now >= nextSample)
        {
            Sample(value, now);
        }

        Due = NextChange(now);
        var before = followed;
        followed = Say(value, now).Value;
        return sensor.IsContact ? followed != before : PassedLevel(before, followed);
    }

    /// <summary>What the sensor says.</summary>
    /// <param name="value">The true value now.</param>
    /// <param name="now">The time now.</param>
    public Reading Say(double value, MonotonicTime now)
    {
        var said = new Reading(ByHand(value), ReadingQuality.Good, now);
        return faults.Count == 0 ? said : Distort(said, now);
    }

    // A hand moves the float itself, so whatever is wrong with it comes after.
    private double ByHand(double value)
    {
        foreach (var (fault, _) in faults)
        {
            value = fault.Kind switch
            {
                FaultKind.MovedWet => 1,
                FaultKind.MovedDry => 0,
                _ => value,
            };
        }

        return value;
    }

    private MonotonicTime NextChange(MonotonicTime now)
    {
        var next = nextSample;
        foreach (var (fault, _) in faults)
        {
            next = fault.Kind switch
            {
                FaultKind.FloatSlow when shown != truth => MonotonicTime.Earlier(next, movedAt + Delay),
                FaultKind.FloatChattering => MonotonicTime.Earlier(next, StretchEnd(fault, now)),
                _ => next,
            };
        }

        return next;
    }

    private bool PassedLevel(double before, double after)
    {
        foreach (var level in levels)
        {
            if (before.CompareTo(level) != after.CompareTo(level))
            {
                return true;
            }
        }

        return false;
    }

    private Duration Delay
    {
        get
        {
            var delay = Duration.Zero;
            foreach (var (fault, _) in faults)
            {
                delay = fault.Kind == FaultKind.FloatSlow ? Duration.Max(delay, Duration.FromSeconds(fault.Size)) : delay;
            }

            return delay;
        }
    }

    private Reading Distort(Reading said, MonotonicTime now)
    {
        foreach (var (fault, before) in faults)
        {
            said = Distort(said, fault, before, now);
        }

        return said;
    }

    private Reading Distort(Reading said, Fault fault, Reading before, MonotonicTime now) => fault.Kind switch
    {
        FaultKind.FloatStuckWet => said with { Value = 1 },
        FaultKind.FloatStuckDry => said with { Value = 0 },
        FaultKind.FloatSlow => said with { Value = shown },
        FaultKind.FloatChattering => said with { Value = Chatter(fault, now) },
        FaultKind.SensorNoise or FaultKind.SensorDrift or FaultKind.SensorOffset => said with { Value = sampled },
        FaultKind.SensorReadsZero => said with { Value = 0 },
        FaultKind.SensorDropout => before,
        FaultKind.SensorFrozen => said with { Value = before.Value },
        FaultKind.SensorCorrupt => said with { Quality = ReadingQuality.Corrupt },
        _ => said,
    };

    // Takes the value anew with everything that disturbs it, and says when next.
    private void Sample(double value, MonotonicTime now)
    {
        var disturbance = 0.0;
        nextSample = MonotonicTime.Never;
        foreach (var (fault, _) in faults)
        {
            if (fault.Kind is not (FaultKind.SensorNoise or FaultKind.SensorDrift or FaultKind.SensorOffset))
            {
                continue;
            }

            disturbance += fault.Size * fault.Kind switch
            {
                FaultKind.SensorDrift => (now - fault.From).TotalHours,
                FaultKind.SensorNoise => SeededScatter.Normal(seed, sensor.Id.Index, now.Nanoseconds),
                _ => 1,
            };
            nextSample = Next(now, samplePeriod);
        }

        // A light meter counts light, and never less than none.
        sampled = sensor.Kind == SensorKind.LightLevel ? Math.Max(0, value + disturbance) : value + disturbance;
    }

    private static MonotonicTime Next(MonotonicTime now, Duration period)
    {
        var nanoseconds = period.ToInt64Nanoseconds();
        return new MonotonicTime((now.Nanoseconds / nanoseconds + 1) * nanoseconds);
    }

    // Each stretch of time falls to one side or the other, so a change comes every second stretch on average.
    private double Chatter(Fault fault, MonotonicTime now) => SeededScatter.Bits(seed, sensor.Id.Index, Stretch(fault, now)) & 1;

    private static long Stretch(Fault fault, MonotonicTime now) => now.Nanoseconds / StretchNs(fault);

    private static MonotonicTime StretchEnd(Fault fault, MonotonicTime now) =>
        new((Stretch(fault, now) + 1) * StretchNs(fault));

    private static long StretchNs(Fault fault) => (long)(fault.Size * 1e9 / 2);
}
