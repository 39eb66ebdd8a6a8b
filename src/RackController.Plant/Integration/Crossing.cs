namespace RackController.Plant;

/// <summary>
/// Finds the first moment at which a curve passes a level. Halves that certainly stay on their side are thrown away, and the rest
/// is halved until a nanosecond is left, so a level that is touched for an instant only is found, too.
/// </summary>
internal static class Crossing
{
    /// <summary>The share of the curve at which it first comes to lie on the other side; infinite when it does not.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="level">The level; on it counts as above.</param>
    /// <param name="rises">Whether it comes from below.</param>
    /// <param name="resolution">Share of the curve below which nothing is told apart.</param>
    public static double First(in Curve curve, double level, bool rises, double resolution) =>
        Stays(curve, level, rises) ? double.PositiveInfinity : Search(curve, level, rises, 0, 1, resolution);

    private static double Search(in Curve curve, double level, bool rises, double from, double to, double resolution)
    {
        if (to - from <= resolution)
        {
            return curve.Last >= level == rises ? to : double.PositiveInfinity;
        }

        var (earlier, later) = curve.Halves();
        var middle = (from + to) / 2;
        var first = Stays(earlier, level, rises)
            ? double.PositiveInfinity
            : Search(earlier, level, rises, from, middle, resolution);
        return !double.IsPositiveInfinity(first) || Stays(later, level, rises)
            ? first
            : Search(later, level, rises, middle, to, resolution);
    }

    private static bool Stays(in Curve curve, double level, bool rises) =>
        rises ? curve.StaysBelow(level) : curve.StaysAtOrAbove(level);
}
