using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>How a number should compare.</summary>
public abstract record Comparison
{
    /// <summary>Whether a number compares so.</summary>
    /// <param name="value">The number.</param>
    public abstract bool Holds(double value);

    /// <summary>The numbers at which the answer turns.</summary>
    public abstract ImmutableArray<double> Turns { get; }

    /// <summary>The comparison in words.</summary>
    /// <param name="unit">The unit of its numbers; empty for counts.</param>
    public abstract string Words(string unit);

    /// <summary>A number with its unit, as precisely as a person cares.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit; empty for counts.</param>
    public static string Number(double value, string unit) => unit.Length == 0 ? $"{value:0.##}" : $"{value:0.##} {unit}";
}

/// <summary>More than.</summary>
/// <param name="Limit">The number itself does not qualify.</param>
public sealed record Above(double Limit) : Comparison
{
    /// <inheritdoc/>
    public override bool Holds(double value) => value > Limit;

    /// <inheritdoc/>
    public override ImmutableArray<double> Turns => [Limit];

    /// <inheritdoc/>
    public override string Words(string unit) => $"above {Number(Limit, unit)}";
}

/// <summary>Less than.</summary>
/// <param name="Limit">The number itself does not qualify.</param>
public sealed record Below(double Limit) : Comparison
{
    /// <inheritdoc/>
    public override bool Holds(double value) => value < Limit;

    /// <inheritdoc/>
    public override ImmutableArray<double> Turns => [Limit];

    /// <inheritdoc/>
    public override string Words(string unit) => $"below {Number(Limit, unit)}";
}

/// <summary>From one number to another.</summary>
/// <param name="Lowest">Qualifies.</param>
/// <param name="Highest">Qualifies.</param>
public sealed record Between(double Lowest, double Highest) : Comparison
{
    /// <inheritdoc/>
    public override bool Holds(double value) => value >= Lowest && value <= Highest;

    /// <inheritdoc/>
    public override ImmutableArray<double> Turns => [Lowest, Highest];

    /// <inheritdoc/>
    public override string Words(string unit) => Lowest == Highest
        ? $"exactly {Number(Lowest, unit)}"
        : $"between {Number(Lowest, unit)} and {Number(Highest, unit)}";
}
