using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Scanning;

/// <summary>What one sensor says, scan after scan: a value that stands, drifts, chatters or is nonsense, measured now, long ago or in
/// time to come.</summary>
internal sealed class RandomFeed(Sensor sensor, double[] levels)
{
    // The wire of a pump at rest carries nothing, and a circuit what its fans draw.
    private readonly double atRest = 1 - sensor.HarmfulValue ?? sensor.Kind switch
    {
        SensorKind.PumpCurrent => 0,
        SensorKind.CircuitCurrent => 0.3,
        _ => (sensor.PlausibleMin + sensor.PlausibleMax) / 2,
    };

    private double value;
    private double driftPerScan;
    private double swing;
    private int flickersFor;
    private double flickersTo;
    private ReadingQuality quality = ReadingQuality.Good;
    private Duration age = Duration.Zero;
    private MonotonicTime? stoodStillAt;
    private MonotonicTime? nonsenseTime;

    /// <summary>From now on it says something else.</summary>
    public void Change(Dice dice, MonotonicTime now)
    {
        switch (dice.Between(0, 9))
        {
            case 0:
                quality = dice.Of(ReadingQuality.Good, ReadingQuality.Corrupt, ReadingQuality.Missing);
                break;
            case 1:
                stoodStillAt = dice.Chance(2) ? now : null;
                nonsenseTime = dice.Chance(5) ? dice.Of(new(long.MinValue), new(long.MaxValue - 1), MonotonicTime.Never) : null;
                age = Duration.FromMilliseconds(dice.Of(0, 150, -150, 2_000, 29_950, -60_000));
                break;
            case 2:
                (flickersFor, flickersTo) = (dice.Between(1, 3), Any(dice));
                break;
            case 3 when !sensor.IsContact:
                driftPerScan = (sensor.PlausibleMax - sensor.PlausibleMin) * dice.Of(0, 0.0001, -0.0001, 0.003, -0.003, 0.1);
                break;
            case 4 when !sensor.IsContact:
                swing = dice.Of(0, 1e-9, 0.4, 20);
                break;
            case 5:
                Heal();
                break;
            default:
                value = Any(dice);
                break;
        }
    }

    /// <summary>It says what it would on a rack at rest, and keeps saying it.</summary>
    public void Heal()
    {
        (quality, age, stoodStillAt, nonsenseTime) = (ReadingQuality.Good, Duration.Zero, null, null);
        (driftPerScan, swing) = (0, 0);
        value = atRest;
    }

    /// <summary>From now on it says this.</summary>
    public void Say(double said) => value = said;

    /// <summary>What it says at a scan.</summary>
    public Reading At(MonotonicTime now)
    {
        value += driftPerScan;
        if (value > sensor.PlausibleMax || value < sensor.PlausibleMin)
        {
            driftPerScan = -driftPerScan;
        }

        swing = -swing;
        var said = flickersFor-- > 0 ? flickersTo : value + swing;
        return new Reading(said, quality, nonsenseTime ?? (stoodStillAt ?? now) + -age);
    }

    private double Any(Dice dice) => dice.Between(0, 11) switch
    {
        0 => dice.Of(double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, -0.0),
        1 => dice.Of(sensor.PlausibleMin, sensor.PlausibleMax),
        2 => dice.Of(Math.BitDecrement(sensor.PlausibleMin), Math.BitIncrement(sensor.PlausibleMax)),
        < 6 when levels.Length > 0 => dice.Of(Math.BitDecrement, Same, Math.BitIncrement)(dice.Of(levels)),
        < 9 when sensor.IsContact => dice.Of(0.0, 1.0),
        _ when sensor.IsContact => dice.Between(0.0, 1.0),
        _ => dice.Between(sensor.PlausibleMin, sensor.PlausibleMax),
    };

    private static double Same(double level) => level;
}
