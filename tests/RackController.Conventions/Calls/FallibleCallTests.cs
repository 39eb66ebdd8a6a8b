using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RackController.Conventions.Sizes;

namespace RackController.Conventions.Calls;

/// <summary>Whoever lets the service call something new that can fail says what shows that no relay stays on for it.</summary>
public sealed class FallibleCallTests
{
    private const string List = "tests/RackController.Service.Tests/Support/FallibleCalls.cs";

    private static readonly string[] Types = ["File", "Directory", "RandomAccess", "Process", "Dns", "I2cDevice", "SpiDevice", "Console"];
    private static readonly string[] Methods = ["ExecuteNonQuery", "ExecuteReader", "ExecuteScalar", "Send", "Connect"];

    private static readonly string[] Made =
    [
        "DriveInfo", "FileInfo", "DirectoryInfo", "FileStream", "StreamReader", "StreamWriter", "FileSystemWatcher", "Socket", "TcpClient",
        "TcpListener", "UdpClient", "HttpClient", "SerialPort", "Process", "ProcessStartInfo", "SqliteConnection",
    ];

    [Fact]
    public void EveryCallOfTheServiceThatCanFailIsOnTheList() =>
        Verdict.None($"{List} says what shows that its failure does no harm:", Calls().Except(Listed()));

    [Fact]
    public void EveryEntryOfTheListIsACallOfTheService() => Verdict.None($"{List} names a call that is gone:", Listed().Except(Calls()));

    private static IEnumerable<string> Listed() =>
        from call in Syntax.Files[List].DescendantNodes().OfType<InvocationExpressionSyntax>()
        where call.Expression.ToString() is "Fails" or "NoHarm"
        select ((LiteralExpressionSyntax)call.ArgumentList.Arguments[0].Expression).Token.ValueText;

    private static IEnumerable<string> Calls() => (
        from file in Syntax.Files
        let room = RoomOf(file.Key)
        where room is not null
        from node in file.Value.DescendantNodes()
        let call = CallIn(node, room, Path.GetFileNameWithoutExtension(file.Key))
        where call is not null
        select call).Distinct();

    private static string? RoomOf(string file) =>
        file.StartsWith("src/RackController.Service/", StringComparison.Ordinal) ? "Service"
        : file.StartsWith("src/RackController.Hardware/", StringComparison.Ordinal) ? "Hardware"
        : null;

    private static string? CallIn(SyntaxNode node, string room, string file) => node switch
    {
        MethodDeclarationSyntax method when method.AttributeLists.ToString().Contains("LibraryImport", StringComparison.Ordinal) =>
            $"{room} LibC.{method.Identifier.ValueText}",
        MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.ValueText: "KernelGpio" } } request
            when request.Parent is ArgumentSyntax { Parent.Parent: InvocationExpressionSyntax } => $"{file}: ioctl {request.Name}",
        MemberAccessExpressionSyntax called => CallOf(called, file),
        ObjectCreationExpressionSyntax made when Made.Contains(made.Type.ToString()) => $"{file}: new {made.Type}",
        _ => null,
    };

    private static string? CallOf(MemberAccessExpressionSyntax called, string file)
    {
        var on = called.Expression.ToString().Replace("System.IO.", "", StringComparison.Ordinal);
        var name = called.Name.Identifier.ValueText;
        return Types.Contains(on) || on is "Console.Error" or "Console.Out" ? $"{file}: {on}.{name}"
            : Methods.Contains(name) ? $"{file}: {name}"
            : on.EndsWith(".WriteTo", StringComparison.Ordinal) ? $"{file}: WriteTo.{name}"
            : null;
    }
}
