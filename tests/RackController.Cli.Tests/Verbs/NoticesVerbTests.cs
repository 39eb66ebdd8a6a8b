using System.Net;
using System.Net.Sockets;
using RackController.Cli.Tests.Support;
using RackController.Service;

namespace RackController.Cli.Tests.Verbs;

public sealed class NoticesVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("notices-");

    private string RackFile => Path.Combine(folder.FullName, "rack.yaml");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void WhereNobodyIsToBeToldATestSaysHow()
    {
        var answer = Prompt.Run("notices", Prompt.DemoRack, "--test");

        Assert.Equal(1, answer.ExitCode);
        Assert.Contains("asks for no notices: write `notices`", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ATestSaysOfEveryWayWhatCameOfIt()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        listener.Stop();
        Assert.Null(SignOfLife.At(new StateFolder(folder.FullName).Alive).Give());
        File.WriteAllText(RackFile, $$"""
            {{File.ReadAllText(Prompt.DemoRack)}}
            notices:
              quiet-hours: { from: 22:00, until: 06:00 }
              mail: [{ to: a@home.example, from: b@home.example, server: 127.0.0.1, port: {{port}}, security: none }]
              webhooks: [{ address: "http://127.0.0.1:{{port}}/hook", secret-file: /etc/not-there }]
              alive: { address: "http://127.0.0.1:{{port}}/alive" }
            """);

        var answer = Prompt.Run("notices", RackFile, "--test", "--state", folder.FullName);

        Assert.Equal(1, answer.ExitCode);
        var lines = answer.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(3, lines.Length);
        Assert.StartsWith($"mail to a@home.example: 127.0.0.1:{port} cannot be reached", lines[0], StringComparison.Ordinal);
        Assert.StartsWith($"webhook 127.0.0.1:{port}/hook: /etc/not-there is not there", lines[1], StringComparison.Ordinal);
        Assert.StartsWith($"signs of life to 127.0.0.1:{port}: 127.0.0.1:{port} cannot be reached", lines[2], StringComparison.Ordinal);
        var check = Prompt.Run("check", RackFile);
        Assert.Contains("quiet from 22:00 to 06:00, except from critical up", check.Output, StringComparison.Ordinal);
        var doctor = Prompt.Run("doctor", RackFile, "--state", folder.FullName);
        Assert.Contains("/etc/not-there is not there", doctor.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void ATestGivesNoSignOfLifeForAControllerThatGivesNone()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        File.WriteAllText(RackFile, $$"""
            {{File.ReadAllText(Prompt.DemoRack)}}
            notices:
              alive: { address: "http://127.0.0.1:{{port}}/alive" }
            """);

        var answer = Prompt.Run("notices", RackFile, "--test", "--state", folder.FullName);

        Assert.Equal(
            (0, $"signs of life to 127.0.0.1:{port}: not asked, because the controller gives no sign of life"),
            (answer.ExitCode, answer.Output.TrimEnd()));
        Assert.False(listener.Pending());
    }
}
