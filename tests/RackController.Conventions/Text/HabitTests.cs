using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RackController.Conventions.Sizes;

namespace RackController.Conventions.Text;

public sealed class HabitTests
{
    [Fact]
    public void NoWarningIsSilencedInCode() => NowhereInSource(
        @"^\s*#pragma\s+warning\s+disable|\[(assembly:\s*|module:\s*)?(Unconditional)?SuppressMessage\b",
        "A rule is right for all (change it once, in .editorconfig, with its reason) or obeyed:");

    [Fact]
    public void NoRegionHidesCode() => NowhereInSource(@"^\s*#region\b", "A file that needs regions is two files:");

    [Fact]
    public void NothingIsLeftToDo() => NowhereInSource(
        @"\b(TODO|FIXME|HACK|XXX)\b|NotImplementedException", "Do it, or file it; the code says what is:", "Text/HabitTests.cs");

    [Fact]
    public void NoProjectSilencesAWarningForItself() => Verdict.None(
        "NoWarn belongs in a Directory.Build.props, for all, with its reason:",
        Repository.Projects.Where(project => Repository.Read(project).Contains("NoWarn", StringComparison.Ordinal)));

    [Fact]
    public void ASkippedTestSaysWhy()
    {
        Verdict.None("A skip states its reason in words:",
            from file in Syntax.Files
            from argument in file.Value.DescendantNodes().OfType<AttributeArgumentSyntax>()
            where argument.NameEquals?.Name.Identifier.Text == "Skip"
            where argument.Expression is not LiteralExpressionSyntax { Token.ValueText.Length: > 20 }
            select $"{file.Key}: {argument}");
    }

    [Fact]
    public void NoStaticFieldCanBeWritten()
    {
        Verdict.None("State is owned by an object that someone made; a static is readonly or const:",
            from file in Syntax.Files
            where file.Key.StartsWith("src/", StringComparison.Ordinal)
            from field in file.Value.DescendantNodes().OfType<FieldDeclarationSyntax>()
            where field.Modifiers.Any(SyntaxKind.StaticKeyword) && !field.Modifiers.Any(SyntaxKind.ReadOnlyKeyword)
            select $"{file.Key}: {field}");
    }

    [Fact]
    public void NoStaticPropertyCanBeWritten()
    {
        Verdict.None("State is owned by an object that someone made; a static property has no setter:",
            from file in Syntax.Files
            where file.Key.StartsWith("src/", StringComparison.Ordinal)
            from property in file.Value.DescendantNodes().OfType<PropertyDeclarationSyntax>()
            where property.Modifiers.Any(SyntaxKind.StaticKeyword)
            where property.AccessorList?.Accessors.Any(SyntaxKind.SetAccessorDeclaration) == true
            select $"{file.Key}: {property.Identifier.Text}");
    }

    [Fact]
    public void AFieldIsNamedWithoutAPrefix()
    {
        Verdict.None("A name says what it is, not where it lives:",
            from file in Syntax.Files
            from field in file.Value.DescendantNodes().OfType<FieldDeclarationSyntax>()
            from variable in field.Declaration.Variables
            where variable.Identifier.ValueText.Contains('_', StringComparison.Ordinal)
            select $"{file.Key}: {variable.Identifier}");
    }

    [Fact]
    public void NoErrorIsSwallowed()
    {
        Verdict.None("A catch does something about what it caught:",
            from file in Syntax.Files
            from clause in file.Value.DescendantNodes().OfType<CatchClauseSyntax>()
            where clause.Block.Statements.Count == 0
            select $"{file.Key}:{clause.GetLocation().GetLineSpan().StartLinePosition.Line + 1}");
    }

    private static void NowhereInSource(string pattern, string rule, string exceptIn = "nowhere")
    {
        var regex = new Regex(pattern, RegexOptions.CultureInvariant);
        Verdict.None(rule,
            from file in Repository.SourceFiles
            where !file.EndsWith(exceptIn, StringComparison.Ordinal)
            from line in Repository.Lines(file).Index()
            where regex.IsMatch(line.Item)
            select $"{file}:{line.Index + 1}: {line.Item.Trim()}");
    }
}
