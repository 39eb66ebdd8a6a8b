using RackController.Testing;

namespace RackController.Cli.Tests.Support;

/// <summary>Runs command lines inside the test, and keeps what they print.</summary>
internal static class Prompt
{
    public static Answer Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exitCode = CommandLine.Run(args, output, error);
        return new Answer(exitCode, output.ToString(), error.ToString());
    }

    /// <summary>The demo rack's file.</summary>
    public static string DemoRack => ShippedFiles.PathTo("config/demo-four-tier.yaml");

    /// <summary>A shipped scenario.</summary>
    public static string Scenario(string name) => ShippedFiles.PathTo($"config/scenarios/{name}.yaml");
}

/// <summary>What a command line came to.</summary>
internal sealed record Answer(int ExitCode, string Output, string Error)
{
    /// <summary>Everything that was printed, which must never be a stack trace.</summary>
    public string All => Output + Error;
}
