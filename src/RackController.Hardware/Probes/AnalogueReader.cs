using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>What a voltage stands for, from many samples of it.</summary>
/// <param name="points">Voltages with what they stand for.</param>
/// <param name="alternates">Whether the effective value of what alternates counts, as of a current of the mains, and not the mean.</param>
/// <param name="sample">Takes a sample, V.</param>
/// <param name="clock">The time.</param>
internal sealed class AnalogueReader(
    ImmutableArray<CalibrationPoint> points, bool alternates, Func<double> sample, Func<MonotonicTime> clock) : IProbeReader
{
    /// <summary>Whole periods at 50 Hz and at 60 Hz, so that hum adds nothing to a mean, and a current is taken whole.</summary>
    public static readonly Duration Window = Duration.FromMilliseconds(200);

    // What is lifted to the middle of the supply stays between ground and twice its mean, even where a start drives it to both ends, and
    // whatever stays there has an effective value of at most its mean. A sine that ground cuts in half has a mean of 0.83 of it. Some room
    // for resistors that are not quite equal.
    private const double LeastLift = 0.95;

    // Twice and more of what hum and the converter's last digit leave of an input at which nothing alternates (from memory): at rest a
    // transformer without a lift is at 0 V too, and nothing is wrong with 0 A.
    private const double NoiseV = 0.005;

    /// <inheritdoc/>
    public double Read()
    {
        var until = clock() + Window;
        var (count, sum, squares) = (0, 0.0, 0.0);
        do
        {
            var voltageV = sample();
            count++;
            sum += voltageV;
            squares += voltageV * voltageV;
        }
        while (clock() < until);

        var meanV = sum / count;
        var effectiveV = Math.Sqrt(Math.Max(0, squares / count - meanV * meanV));
        if (alternates && effectiveV > NoiseV && meanV < LeastLift * effectiveV)
        {
            var seen = string.Create(CultureInfo.InvariantCulture, $"mean {meanV:0.00} V, effective value {effectiveV:0.00} V");
            throw new IOException($"its wave goes below ground and is cut off there ({seen}): lift its zero to about half the supply, "
                + "with two equal resistors and a capacitor");
        }

        return ValueOf(alternates ? effectiveV : meanV);
    }

    /// <summary>What a voltage stands for: on the straight line through the two points nearest to it.</summary>
    public double ValueOf(double voltageV)
    {
        var upper = 1;
        while (upper < points.Length - 1 && voltageV > points[upper].VoltageV)
        {
            upper++;
        }

        var (low, high) = (points[upper - 1], points[upper]);
        return low.Value + (voltageV - low.VoltageV) / (high.VoltageV - low.VoltageV) * (high.Value - low.Value);
    }
}
