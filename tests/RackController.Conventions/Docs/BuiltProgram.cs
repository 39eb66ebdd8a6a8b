using System.Diagnostics;

namespace RackController.Conventions.Docs;

/// <summary>Runs the program as it was built, from a folder that looks like the repository but takes what it writes.</summary>
internal static class BuiltProgram
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    public static (int ExitCode, IReadOnlyList<string> Output) Run(params string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("rackcontroller-docs-");
        try
        {
            Directory.CreateSymbolicLink(Path.Combine(folder.FullName, "config"), Repository.PathOf("config"));
            return Run(folder.FullName, arguments);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int ExitCode, IReadOnlyList<string> Output) Run(string folder, string[] arguments)
    {
        var program = Repository.PathOf($"src/RackController/bin/{Repository.Configuration}/net10.0/RackController.dll");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{string.Join(' ', arguments)} was still running after {Patience.TotalSeconds} s");
        }

        return (process.ExitCode, (output.Result + error.Result).TrimEnd().Split('\n'));
    }
}
