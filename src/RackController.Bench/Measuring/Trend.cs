namespace RackController.Bench;

/// <summary>
/// A curve for a chart, kept as few points: those where it moved, and those between which it stood still. When there are more than
/// a chart can show, only the least and the greatest of every stretch of time stay, and the stretches grow with the run: no
/// peak is lost, and ten years take no more room than one.
/// </summary>
/// <param name="name">What it shows.</param>
/// <param name="tolerance">A change smaller than this is not worth a point, in the curve's unit.</param>
internal sealed class Trend(string name, double tolerance)
{
    /// <summary>Several times as many points as a screen has columns.</summary>
    internal const int MostPoints = 20_000;

    private readonly List<TrendPoint> points = [];
    private TrendPoint? skipped;
    private double stretchS;

    public string Name => name;

    public IReadOnlyList<TrendPoint> Points => points;

    /// <summary>Takes the next value.</summary>
    /// <param name="seconds">Time since the run began, s.</param>
    /// <param name="value">In the curve's unit.</param>
    public void Add(double seconds, double value)
    {
        var point = new TrendPoint(seconds, value);
        if (points.Count > 0 && Math.Abs(value - points[^1].Value) < tolerance)
        {
            skipped = point;
            return;
        }

        Close();
        Keep(point);
        if (points.Count >= MostPoints)
        {
            Thin();
        }
    }

    /// <summary>Keeps the last point, so that the curve reaches the end of the run.</summary>
    public void Close()
    {
        if (skipped is { } last)
        {
            skipped = null;
            Keep(last);
        }
    }

    private void Thin()
    {
        var lengthS = points[^1].Seconds - points[0].Seconds;
        stretchS = Math.Max(2 * stretchS, 4 * lengthS / MostPoints);
        var all = points.ToArray();
        points.Clear();
        foreach (var point in all)
        {
            Keep(point);
        }
    }

    private void Keep(TrendPoint point)
    {
        if (stretchS > 0 && points.Count >= 2 && Stretch(points[^2]) == Stretch(point))
        {
            var between = point.Value.CompareTo(points[^2].Value) * point.Value.CompareTo(points[^1].Value);
            if (between <= 0)
            {
                return;
            }

            // It goes beyond both of them: the one that lies between stays no longer.
            var isGreatest = point.Value > points[^1].Value;
            points.RemoveAt(points[^1].Value > points[^2].Value == isGreatest ? points.Count - 1 : points.Count - 2);
        }

        points.Add(point);
    }

    private long Stretch(TrendPoint point) => (long)(point.Seconds / stretchS);
}

/// <summary>One point of a curve.</summary>
/// <param name="Seconds">Time since the run began, s.</param>
/// <param name="Value">In the curve's unit.</param>
internal readonly record struct TrendPoint(double Seconds, double Value);
