using RackController.Bench;
using RackController.RackFile;

namespace RackController.Fuzz;

/// <summary>The scenario file, beside a rack file that is right.</summary>
internal sealed class ScenarioTarget : Target
{
    private readonly string path;

    /// <summary>Prepares the folders: scenarios name their rack file as seen from where they are.</summary>
    /// <param name="ground">A folder to write inputs to.</param>
    public ScenarioTarget(string ground)
        : base("scenario")
    {
        path = Path.Combine(Directory.CreateDirectory(Path.Combine(ground, "scenarios")).FullName, "scenario.yaml");
        File.Copy(Repository.File("config/demo-first-rack.yaml"), Path.Combine(ground, "demo-first-rack.yaml"), overwrite: true);
        File.Copy(Repository.File("config/demo-four-tier.yaml"), Path.Combine(ground, "demo-four-tier.yaml"), overwrite: true);
    }

    /// <inheritdoc/>
    public override void Read(byte[] input)
    {
        File.WriteAllBytes(path, input);
        var reading = ScenarioReader.Read(path);
        ComplaintRules.Hold(reading.Complaints, reading.Scenario is not null);
        _ = FileRecognition.KindOf(path);
    }
}
