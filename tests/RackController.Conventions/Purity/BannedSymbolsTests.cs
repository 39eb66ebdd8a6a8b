using System.Collections.Immutable;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;
using RackController.Conventions.Architecture;

namespace RackController.Conventions.Purity;

/// <summary>Model, Control, Plant and Growing have no clock, chance, file or thread; three tests each see it another way.</summary>
public sealed class BannedSymbolsTests
{
    // What the compiler itself writes into every assembly, or into an iterator, without anybody using a thread.
    private static readonly string[] WrittenByTheCompiler = ["System.Environment.get_CurrentManagedThreadId"];

    public static TheoryData<string> PureRooms => ["Model", "Control", "Plant", "Growing"];

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void ABuiltPureRoomUsesNothingBanned(string room)
    {
        var built = new BuiltAssembly($"RackController.{room}");
        var members = built.ForeignMembers.Except(WrittenByTheCompiler).ToList();
        Verdict.None($"RackController.{room} uses what src/BannedSymbols.txt bans:",
            from symbol in BannedSymbol.All
            from name in members.Where(member => symbol.ForbidsMember(member) || symbol.ForbidsType(TypeOf(member)))
            select $"{name}: {symbol.Cure}");
    }

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void TheAnalyzerIsPartOfAPureRoomsBuild(string room)
    {
        var packages = Repository.Read($"src/RackController.{room}/packages.lock.json");
        Assert.Contains("Microsoft.CodeAnalysis.BannedApiAnalyzers", packages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("System.DateTime.UtcNow.ToString();", "take a Moment as a parameter")]
    [InlineData("System.Diagnostics.Stopwatch.StartNew();", "take a Moment as a parameter")]
    [InlineData("System.Environment.TickCount64.ToString();", "take it as a parameter")]
    [InlineData("new System.Random(1).Next();", "repeatable from its seed")]
    [InlineData("System.Guid.NewGuid();", "a run must be repeatable")]
    [InlineData("\"pump\".GetHashCode();", "differs from process to process")]
    [InlineData("System.IO.File.Exists(\"rack.yaml\");", "files belong to")]
    [InlineData("System.Threading.Thread.Sleep(1);", "stay on the caller's thread")]
    [InlineData("System.Threading.Tasks.Task.Delay(1);", "stay on the caller's thread")]
    [InlineData("System.Console.WriteLine();", "return the text or an event")]
    public async Task ABannedSymbolIsRefusedWithItsCure(string statement, string cure)
    {
        var refusals = await Analyze($"static class Probe {{ static void Try() {{ {statement} }} }}");
        Assert.Contains(refusals, refusal => refusal.Id == "RS0030" && refusal.GetMessage().Contains(cure, StringComparison.Ordinal));
    }

    [Fact]
    public async Task PlainArithmeticIsNotRefused() =>
        Assert.Empty(await Analyze("static class Probe { static double Try(double x) => System.Math.Sqrt(x); }"));

    private static string TypeOf(string member) => member[..member.LastIndexOf('.')].TrimEnd('.');

    private static async Task<ImmutableArray<Diagnostic>> Analyze(string source)
    {
        var framework = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal))
            .Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create("Probe", [CSharpSyntaxTree.ParseText(source)], framework,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        var options = new AnalyzerOptions([new ListOfBannedSymbols()]);
        return await compilation.WithAnalyzers(LoadAnalyzers(), options).GetAnalyzerDiagnosticsAsync();
    }

    private static ImmutableArray<DiagnosticAnalyzer> LoadAnalyzers()
    {
        var package = typeof(BannedSymbolsTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(attribute => attribute.Key == "BannedApiAnalyzers").Value!;
        var folder = Path.Combine(package, "analyzers", "dotnet", "cs");
        Assembly.LoadFrom(Path.Combine(folder, "Microsoft.CodeAnalysis.BannedApiAnalyzers.dll"));
        return
        [
            .. Assembly.LoadFrom(Path.Combine(folder, "Microsoft.CodeAnalysis.CSharp.BannedApiAnalyzers.dll")).GetTypes()
                .Where(type => !type.IsAbstract && type.IsAssignableTo(typeof(DiagnosticAnalyzer)))
                .Where(type => type.Name.Contains("SymbolIsBanned", StringComparison.Ordinal))
                .Select(type => (DiagnosticAnalyzer)Activator.CreateInstance(type)!),
        ];
    }

    private sealed class ListOfBannedSymbols : AdditionalText
    {
        public override string Path => Repository.PathOf("src/BannedSymbols.txt");

        public override SourceText GetText(CancellationToken cancellationToken = default) => SourceText.From(File.ReadAllText(Path));
    }
}
