using RackController.Testing;

namespace RackController.Cli.Tests.Support;

/// <summary>Texts that a person has read and found good. When a text changes on purpose, run the tests with
/// APPROVE=1 in the environment, and read what changed before committing it.</summary>
internal static class Approved
{
    public static void Matches(string name, string text)
    {
        var file = ShippedFiles.PathTo($"tests/RackController.Cli.Tests/Approved/{name}.txt");
        var lines = string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd()));
        if (Environment.GetEnvironmentVariable("APPROVE") == "1")
        {
            File.WriteAllText(file, lines);
        }

        Assert.Equal(File.ReadAllText(file), lines);
    }
}
