namespace RackController.Growing;

/// <summary>Everything from one number to another, both of them included.</summary>
/// <param name="Least">The least that is allowed.</param>
/// <param name="Most">The most that is allowed, not below <paramref name="Least"/>.</param>
public readonly record struct Bounds(double Least, double Most)
{
    // A millionth of an hour, a gram or a mole is nobody's limit: hours that follow from light by a division meet again.
    private const double Slack = 1e-6;

    /// <summary>Whether there is such a number at all.</summary>
    public bool IsPossible => Least <= Most + Slack;

    /// <summary>Whether a number lies within.</summary>
    /// <param name="value">A number of the same unit.</param>
    public bool Holds(double value) => value >= Least - Slack && value <= Most + Slack;

    /// <summary>What both allow; perhaps nothing (<see cref="IsPossible"/>).</summary>
    /// <param name="other">Bounds of the same unit.</param>
    public Bounds Within(Bounds other) => new(Math.Max(Least, other.Least), Math.Min(Most, other.Most));

    /// <summary>The nearest number that is allowed.</summary>
    /// <param name="value">A number of the same unit.</param>
    public double Nearest(double value) => Math.Max(Least, Math.Min(Most, value));
}

/// <summary>Every whole number from one to another, both of them included: days, floods a day.</summary>
/// <param name="Least">The least that is allowed.</param>
/// <param name="Most">The most that is allowed, not below <paramref name="Least"/>.</param>
public readonly record struct WholeBounds(int Least, int Most)
{
    /// <summary>Whether a number lies within.</summary>
    /// <param name="value">A number of the same unit.</param>
    public bool Holds(int value) => value >= Least && value <= Most;
}
