namespace RackController.Control;

/// <summary>The values between which every comparison made so far comes out as it did.</summary>
internal struct Band
{
    private double low;
    private double high;

    /// <summary>Nothing was compared, and any value will do.</summary>
    public static Band Everything { get; } = new() { low = double.NegativeInfinity, high = double.PositiveInfinity };

    /// <summary>The value itself was asked for, and no other will do.</summary>
    public static Band None { get; } = new() { low = double.NaN, high = double.NaN };

    /// <summary>A value was compared with a limit.</summary>
    public void Narrow(double limit, bool isAbove)
    {
        // Of these two, what is not a number stays so.
        low = isAbove ? Math.Max(low, limit) : low;
        high = isAbove ? high : Math.Min(high, limit);
    }

    /// <summary>Whether a value lies well inside; on a limit it does not.</summary>
    public readonly bool Holds(double value) => value > low && value < high;
}
