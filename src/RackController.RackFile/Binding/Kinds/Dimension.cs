using System.Collections.Immutable;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>What kind of quantity a value is, and in which units it may be written.</summary>
/// <param name="Noun">With its article: <c>a length</c>.</param>
/// <param name="Example">One value as it would be written.</param>
/// <param name="Units">The units, the most usual first.</param>
public sealed record Dimension(string Noun, string Example, ImmutableArray<Unit> Units)
{
    /// <summary>The units on offer, for a complaint.</summary>
    public string UnitNames => string.Join(", ", Units.Where(unit => unit.IsOffered).Select(unit => unit.Text));

    /// <summary>The unit that is written so.</summary>
    /// <param name="text">The unit as written.</param>
    public Unit? Find(string text) => Units.FirstOrDefault(unit => unit.Text == text);
}

/// <summary>One way to write a unit.</summary>
/// <param name="Text">As written.</param>
/// <param name="ToBase">Converts a number of it to the dimension's base unit.</param>
/// <param name="IsOffered">Whether complaints and schema name it; other spellings are only understood.</param>
public sealed record Unit(string Text, Func<double, double> ToBase, bool IsOffered = true);
