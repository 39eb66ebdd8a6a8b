namespace RackController.Plant;

/// <summary>
/// How one quantity runs over one step of the integrator, as a cubic in Bernstein form: it begins at the first of its four numbers,
/// ends at the last, and never leaves the range of all four (the convex hull of a Bezier curve), which is what makes sure that no
/// crossing is missed. Cut in halves by de Casteljau's construction.
/// </summary>
/// <param name="First">Where it begins.</param>
/// <param name="Second">The end of the tangent at its beginning.</param>
/// <param name="Third">The end of the tangent at its end.</param>
/// <param name="Last">Where it ends.</param>
internal readonly record struct Curve(double First, double Second, double Third, double Last)
{
    /// <summary>The cubic of Hermite through both ends with the slopes there; as exact as the third-order step itself.</summary>
    /// <param name="start">Value at the beginning.</param>
    /// <param name="startSlope">Rate there, per second.</param>
    /// <param name="end">Value at the end.</param>
    /// <param name="endSlope">Rate there, per second.</param>
    /// <param name="seconds">Length of the step.</param>
    public static Curve Through(double start, double startSlope, double end, double endSlope, double seconds) =>
        new(start, start + seconds / 3 * startSlope, end - seconds / 3 * endSlope, end);

    /// <summary>How fast this curve changes, per second, over a step of so many seconds.</summary>
    public Curve Rate(double seconds)
    {
        var start = 3 / seconds * (Second - First);
        var middle = 3 / seconds * (Third - Second);
        var end = 3 / seconds * (Last - Third);
        return new(start, (start + 2 * middle) / 3, (2 * middle + end) / 3, end);
    }

    /// <summary>Its value. What stays the same does so to the last bit, or a temperature that rests on a limit would seem to pass it
    /// to and fro.</summary>
    /// <param name="share">Share of the step that has passed: 0 to 1.</param>
    public double At(double share)
    {
        var middle = Between(Second, Third, share);
        var earlier = Between(Between(First, Second, share), middle, share);
        var later = Between(middle, Between(Third, Last, share), share);
        return Between(earlier, later, share);
    }

    /// <summary>Whether it certainly stays at or above a level.</summary>
    public bool StaysAtOrAbove(double level) => First >= level && Second >= level && Third >= level && Last >= level;

    /// <summary>Whether it certainly stays below a level.</summary>
    public bool StaysBelow(double level) => First < level && Second < level && Third < level && Last < level;

    /// <summary>What is left of it from a point on.</summary>
    /// <param name="share">Where to cut, 0 to 1.</param>
    public Curve After(double share)
    {
        var a = Between(First, Second, share);
        var b = Between(Second, Third, share);
        var c = Between(Third, Last, share);
        var ab = Between(a, b, share);
        var bc = Between(b, c, share);
        return new Curve(Between(ab, bc, share), bc, c, Last);
    }

    /// <summary>Its two halves.</summary>
    public (Curve Earlier, Curve Later) Halves()
    {
        var a = (First + Second) / 2;
        var b = (Second + Third) / 2;
        var c = (Third + Last) / 2;
        var ab = (a + b) / 2;
        var bc = (b + c) / 2;
        var middle = (ab + bc) / 2;
        return (new Curve(First, a, ab, middle), new Curve(middle, bc, c, Last));
    }

    private static double Between(double from, double to, double share) => from + share * (to - from);
}
