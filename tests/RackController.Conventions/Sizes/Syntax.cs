using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RackController.Conventions.Sizes;

/// <summary>Parses source files, each once.</summary>
internal static class Syntax
{
    private static readonly Lazy<IReadOnlyDictionary<string, SyntaxNode>> Parsed = new(() =>
        Repository.SourceFiles.ToDictionary(file => file, file => CSharpSyntaxTree.ParseText(Repository.Read(file)).GetRoot()));

    /// <summary>The syntax of every source file, by its path.</summary>
    public static IReadOnlyDictionary<string, SyntaxNode> Files => Parsed.Value;

    /// <summary>Every body of code that has a name: methods, constructors, operators, accessors, local functions.</summary>
    public static IEnumerable<(string File, string Name, int Lines)> Methods =>
        from file in Files
        from node in file.Value.DescendantNodes()
        where node is BaseMethodDeclarationSyntax or AccessorDeclarationSyntax or LocalFunctionStatementSyntax
        select (file.Key, NameOf(node), LinesOf(node));

    private static string NameOf(SyntaxNode node) => node switch
    {
        MethodDeclarationSyntax method => method.Identifier.Text,
        ConstructorDeclarationSyntax constructor => constructor.Identifier.Text,
        LocalFunctionStatementSyntax function => function.Identifier.Text,
        AccessorDeclarationSyntax accessor => accessor.Keyword.Text,
        _ => node.Kind().ToString(),
    };

    private static int LinesOf(SyntaxNode node)
    {
        var span = node.SyntaxTree.GetLineSpan(node.Span);
        return span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
    }
}
