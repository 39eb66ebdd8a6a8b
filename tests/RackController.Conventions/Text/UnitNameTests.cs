using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RackController.Conventions.Sizes;

namespace RackController.Conventions.Text;

/// <summary>A bare number says in its name what it counts: a grower's file has units, and so does the code behind it.</summary>
public sealed class UnitNameTests
{
    private static readonly string[] Units =
    [
        "Mm", "M", "MPerS", "M2", "M3", "M3PerS", "L", "Lpm", "Ml", "A", "V", "W", "Wh", "Kwh", "C", "K", "S", "Ms", "Min", "H", "Pa",
        "Kg", "KgPerM3", "Lux", "UmolPerM2S", "MolPerM2D", "MolPerM2", "Percent",
    ];

    // Numbers without a dimension, by the last word of their names.
    private static readonly string[] Dimensionless = ["Share", "Factor", "Multiple", "Exponent", "Ratio", "Number", "Coefficient"];

    // Numbers whose unit is that of what they belong to, a sensor or a unit, as their docstrings say.
    private static readonly string[] InTheUnitOfTheirOwner =
        ["Value", "HarmfulValue", "PlausibleMin", "PlausibleMax", "OnAbove", "OffBelow", "Offset"];

    // Half an interval, in the unit of the value that it is of.
    private static readonly string[] InTheUnitOfItsValue = ["Within"];

    [Theory]
    [InlineData("Model")]
    public void ABareNumberNamesItsUnit(string room) => Verdict.None(
        "End the name with its unit (depthMm, flowLpm), or use a type that carries it:",
        from file in Syntax.Files
        where file.Key.StartsWith($"src/RackController.{room}/", StringComparison.Ordinal)
        from name in PublicNumbers(file.Value)
        where !NamesItsUnit(name)
        select $"{file.Key}: {name}");

    private static bool NamesItsUnit(string name) =>
        InTheUnitOfTheirOwner.Contains(name, StringComparer.OrdinalIgnoreCase)
        || InTheUnitOfItsValue.Contains(name)
        || Units.Any(unit => name.EndsWith(unit, StringComparison.Ordinal))
        || Dimensionless.Any(word => name.EndsWith(word, StringComparison.Ordinal));

    private static IEnumerable<string> PublicNumbers(SyntaxNode file) => file.DescendantNodes()
        .Select(node => node switch
        {
            PropertyDeclarationSyntax property => (property.Type, property.Identifier),
            ParameterSyntax parameter => (parameter.Type, parameter.Identifier),
            _ => default,
        })
        .Where(member => member.Type?.ToString() is "double" or "double?")
        .Select(member => member.Identifier.Text);
}
