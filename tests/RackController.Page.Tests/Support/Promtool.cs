using System.Diagnostics;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>The checker that Prometheus brings along, which <c>tests/all</c> unpacks from Debian's package.</summary>
internal static class Promtool
{
    /// <summary>Where it lies; null where it was not unpacked.</summary>
    public static string? Program { get; } =
        ShippedFiles.PathTo("artifacts/promtool/usr/bin/promtool") is var path && File.Exists(path) ? path : null;

    /// <summary>What it says of metrics; nothing when they are right.</summary>
    /// <param name="metrics">In the text format.</param>
    public static async Task<string> ComplaintsAsync(string metrics)
    {
        using var process = Process.Start(new ProcessStartInfo(Program!, ["check", "metrics"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        await process.StandardInput.WriteAsync(metrics);
        process.StandardInput.Close();
        var said = await process.StandardOutput.ReadToEndAsync() + await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 || said.Length > 0 ? said : $"exit code {process.ExitCode}";
    }
}

/// <summary>A test that needs it.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FactWithPromtoolAttribute : FactAttribute
{
    public FactWithPromtoolAttribute() =>
        Skip = Promtool.Program is null ? "promtool is not unpacked: `tests/unpack prometheus artifacts/promtool` does it" : null;
}
