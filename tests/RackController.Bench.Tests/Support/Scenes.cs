using RackController.Testing;

namespace RackController.Bench.Tests.Support;

/// <summary>Scenarios written by tests, on the demo rack.</summary>
internal static class Scenes
{
    /// <summary>Writes a scenario into a folder of its own and reads it.</summary>
    /// <param name="text">Everything but the rack file.</param>
    public static ScenarioReading Read(string text)
    {
        var folder = Directory.CreateTempSubdirectory("bench-scene-");
        try
        {
            var file = Path.Combine(folder.FullName, "scene.yaml");
            var rack = ShippedFiles.PathTo("config/demo-four-tier.yaml");
            File.WriteAllText(file, $"about: a scene of a test\nrack-file: {rack}\n{text}");
            return ScenarioReader.Read(file);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Runs a scene.</summary>
    /// <param name="text">Everything but the rack file.</param>
    public static RunResult Run(string text)
    {
        var reading = Read(text);
        Assert.True(reading.Scenario is not null, string.Join('\n', reading.Complaints));
        return ScenarioRun.Run(reading.Scenario);
    }

    /// <summary>Runs a scene on a demo rack whose circuits have no contactor upstream.</summary>
    /// <param name="text">Everything but the rack file.</param>
    public static RunResult RunWithoutContactor(string text)
    {
        var scenario = Read(text).Scenario!;
        var circuits = scenario.Site.Circuits.Select(circuit => circuit with { HasUpstreamContactor = false });
        return ScenarioRun.Run(scenario with { Site = scenario.Site with { Circuits = [.. circuits] } });
    }
}
