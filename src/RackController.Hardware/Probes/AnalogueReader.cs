using System.Collections.Immutable;
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
        return ValueOf(alternates ? Math.Sqrt(Math.Max(0, squares / count - meanV * meanV)) : meanV);
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
