using System.Collections.Immutable;
using NodaTime;

namespace RackController.Service;

/// <summary>What one measuring sensor said over a span, summed up by stretches of equal length, so that no peak is lost.</summary>
/// <param name="Sensor">The sensor's name.</param>
/// <param name="Points">A point for each stretch in which it said anything, oldest first.</param>
public sealed record SensorTrend(string Sensor, ImmutableArray<TrendPoint> Points)
{
    /// <summary>So many stretches a span has at most: about as many as a screen has places for.</summary>
    public const int MostPoints = 600;

    /// <summary>What some sensors said over a span.</summary>
    /// <param name="samples">What sensors said, in any order; those of other sensors are left out.</param>
    /// <param name="sensors">The names of the sensors.</param>
    /// <param name="span">The span.</param>
    /// <param name="mostPoints">How many stretches at most, from 1.</param>
    public static ImmutableArray<SensorTrend> Of(
        IEnumerable<Sample> samples, IReadOnlyList<string> sensors, HistorySpan span, int mostPoints = MostPoints)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(sensors);
        var stretches = sensors.ToDictionary(name => name, _ => new Stretch?[mostPoints]);
        foreach (var sample in samples.Where(sample => span.Holds(sample.Wall) && stretches.ContainsKey(sample.Sensor)))
        {
            (stretches[sample.Sensor][span.StretchOf(sample.Wall, mostPoints)] ??= new Stretch()).Add(sample);
        }

        var longestSilence = Duration.Max(SampleThinning.MeasuredEvery * 3, span.Length / mostPoints * 2);
        return [.. sensors.Select(name => new SensorTrend(name, [.. PointsOf(stretches[name], longestSilence)]))];
    }

    private static IEnumerable<TrendPoint> PointsOf(Stretch?[] stretches, Duration longestSilence)
    {
        var heardAt = Instant.MinValue;
        var wasWorthless = false;
        foreach (var stretch in stretches.OfType<Stretch>())
        {
            if (stretch.Count > 0)
            {
                var isAfterGap = wasWorthless || stretch.First - heardAt > longestSilence;
                yield return new TrendPoint(stretch.First, stretch.Least, stretch.Sum / stretch.Count, stretch.Most, isAfterGap);
            }

            wasWorthless = stretch.Count == 0;
            heardAt = stretch.Last;
        }
    }

    private sealed class Stretch
    {
        public Instant First { get; private set; } = Instant.MaxValue;

        public Instant Last { get; private set; } = Instant.MinValue;

        public double Least { get; private set; } = double.PositiveInfinity;

        public double Most { get; private set; } = double.NegativeInfinity;

        public double Sum { get; private set; }

        public int Count { get; private set; }

        public void Add(Sample sample)
        {
            Last = Instant.Max(Last, sample.Wall);
            if (sample.Value is not { } value)
            {
                return;
            }

            First = Instant.Min(First, sample.Wall);
            Least = Math.Min(Least, value);
            Most = Math.Max(Most, value);
            Sum += value;
            Count++;
        }
    }
}

/// <summary>What a sensor said over one stretch of time.</summary>
/// <param name="At">The time of the first value in it.</param>
/// <param name="Least">The least value, in the unit of the sensor's kind.</param>
/// <param name="Mean">The mean of the values.</param>
/// <param name="Most">The greatest value.</param>
/// <param name="IsAfterGap">Whether nothing was known for a while before it.</param>
public readonly record struct TrendPoint(Instant At, double Least, double Mean, double Most, bool IsAfterGap);
