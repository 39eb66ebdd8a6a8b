using NodaTime;

namespace RackController.Bench;

/// <summary>A curve for a chart, kept as few points: those where it moved, and those between which it stood still.</summary>
/// <param name="name">What it shows.</param>
/// <param name="tolerance">A change smaller than this is not worth a point, in the curve's unit.</param>
internal sealed class Trend(string name, double tolerance)
{
    private readonly List<TrendPoint> points = [];
    private TrendPoint? skipped;

    public string Name => name;

    public IReadOnlyList<TrendPoint> Points => points;

    public void Add(Duration elapsed, double value)
    {
        var point = new TrendPoint(elapsed.TotalSeconds, value);
        if (points.Count > 0 && Math.Abs(value - points[^1].Value) < tolerance)
        {
            skipped = point;
            return;
        }

        Close();
        points.Add(point);
    }

    /// <summary>Keeps the last point, so that the curve reaches the end of the run.</summary>
    public void Close()
    {
        if (skipped is { } last)
        {
            points.Add(last);
            skipped = null;
        }
    }
}

/// <summary>One point of a curve.</summary>
/// <param name="Seconds">Time since the run began, s.</param>
/// <param name="Value">In the curve's unit.</param>
internal readonly record struct TrendPoint(double Seconds, double Value);
