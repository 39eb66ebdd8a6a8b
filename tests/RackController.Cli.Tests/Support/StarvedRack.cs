namespace RackController.Cli.Tests.Support;

/// <summary>The demo rack with a weaker pump and wide-open branches, which starve its top tier, in a folder of its own.</summary>
internal sealed class StarvedRack : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("starved-rack-");

    public StarvedRack()
    {
        var demo = System.IO.File.ReadAllText(Prompt.DemoRack);
        System.IO.File.WriteAllText(File, demo
            .Replace("flow: 40 L/min, head: 3 m", "flow: 18 L/min, head: 1.9 m", StringComparison.Ordinal)
            .Replace("    tiers:  ", "    branch: { minor-loss: 14 }\n    tiers:  ", StringComparison.Ordinal));
        System.IO.File.WriteAllText(Scenario, """
            about: an hour of a rack with wide-open branches
            rack-file: rack.yaml
            start: 2026-03-02 06:30
            length: 1 h
            expect:
              - that: the aerator runs
                always: { load: north/aerator, is: on }
                from: 1 min

            """);
    }

    /// <summary>The rack file.</summary>
    public string File => Path.Combine(folder.FullName, "rack.yaml");

    /// <summary>A scenario on it.</summary>
    public string Scenario => Path.Combine(folder.FullName, "scene.yaml");

    public void Dispose() => folder.Delete(recursive: true);
}
