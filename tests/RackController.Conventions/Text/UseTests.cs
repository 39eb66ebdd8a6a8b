using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RackController.Conventions.Sizes;

namespace RackController.Conventions.Text;

/// <summary>Nothing is kept that nothing needs, and no test is kept that says nothing.</summary>
public sealed partial class UseTests
{
    // What the runtime calls, and what writes the generated files.
    private static readonly string[] CalledFromOutside =
        ["Main", "WaitForStartAsync", "Dispose", "DisposeAsync", "ToString", "Equals", "GetHashCode", "RackFileSchema",
            "OrdersSchema", "CropsSchema", "ToJson", "ToMarkdown"];

    // What is really so on a simulated rack is for the eyes of tests as much as for the bench.
    private const string ForTestsToo = "src/RackController.Plant/Truth/";

    [Fact]
    public void EveryMemberOfTheProductIsUsedByTheProduct()
    {
        var product = Syntax.Files
            .Where(file => file.Key.StartsWith("src/", StringComparison.Ordinal))
            .ToList();
        var mentions = product.SelectMany(file => file.Value.DescendantTokens())
            .Where(token => token.IsKind(SyntaxKind.IdentifierToken))
            .Select(token => token.ValueText)
            .Concat(WordsOfSlices())
            .CountBy(word => word)
            .ToDictionary();
        Verdict.None("Only tests use it, or nobody does; delete it:",
            from file in product
            where !file.Key.StartsWith(ForTestsToo, StringComparison.Ordinal)
            from name in file.Value.DescendantNodes().Select(NameOf)
            where name is not null && !CalledFromOutside.Contains(name) && mentions[name] == 1
            select $"{file.Key}: {name}");
    }

    // Slices are Razor, which the compiler's own parser does not read; any word of theirs counts as a mention.
    private static IEnumerable<string> WordsOfSlices() =>
        from file in Repository.TextFiles
        where file.EndsWith(".cshtml", StringComparison.Ordinal)
        from word in Word().Matches(Repository.Read(file))
        select word.Value;

    [GeneratedRegex(@"\w+")]
    private static partial Regex Word();

    [Fact]
    public void EveryTestCanFail()
    {
        var methods = (
            from file in Syntax.Files
            where file.Key.StartsWith("tests/", StringComparison.Ordinal)
            from method in file.Value.DescendantNodes().OfType<MethodDeclarationSyntax>()
            select (file.Key, Method: method)).ToList();
        var judging = new HashSet<string>();
        int known;
        do
        {
            known = judging.Count;
            judging.UnionWith(methods.Where(at => Judges(at.Method, judging)).Select(at => at.Method.Identifier.ValueText));
        }
        while (judging.Count > known);

        Verdict.None("A test asserts something:",
            from at in methods
            where IsTest(at.Method) && !judging.Contains(at.Method.Identifier.ValueText)
            select $"{at.Key}: {at.Method.Identifier.ValueText}");
    }

    private static bool IsTest(MethodDeclarationSyntax method) =>
        method.AttributeLists.SelectMany(list => list.Attributes).Any(attribute => attribute.Name.ToString() is "Fact" or "Theory");

    private static bool Judges(MethodDeclarationSyntax method, HashSet<string> judging) =>
        method.DescendantNodes().OfType<IdentifierNameSyntax>().Any(name =>
            name.Identifier.ValueText is "Assert" or "Sample" || judging.Contains(name.Identifier.ValueText));

    private static string? NameOf(SyntaxNode node) => node switch
    {
        MemberDeclarationSyntax member when member.Modifiers.Any(SyntaxKind.OverrideKeyword) => null,
        MethodDeclarationSyntax { ExplicitInterfaceSpecifier: null } method => method.Identifier.ValueText,
        PropertyDeclarationSyntax property => property.Identifier.ValueText,
        BaseTypeDeclarationSyntax type when !HasExtensions(type) => type.Identifier.ValueText,
        EnumMemberDeclarationSyntax member => member.Identifier.ValueText,
        _ => null,
    };

    // A class that only extends another type is used by its methods, not by its name.
    private static bool HasExtensions(BaseTypeDeclarationSyntax type) =>
        type.DescendantNodes().OfType<ParameterSyntax>().Any(parameter => parameter.Modifiers.Any(SyntaxKind.ThisKeyword))
        || type.DescendantNodes().Any(node => node.IsKind(SyntaxKind.ExtensionBlockDeclaration));
}
