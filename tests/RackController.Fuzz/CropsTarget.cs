using RackController.PlanFiles;

namespace RackController.Fuzz;

/// <summary>The crops file.</summary>
internal sealed class CropsTarget(string ground) : Target("crops")
{
    private readonly string path = Path.Combine(ground, "crops.yaml");

    /// <inheritdoc/>
    public override void Read(byte[] input)
    {
        File.WriteAllBytes(path, input);
        var reading = CropsReader.Read(path);
        ComplaintRules.Hold(reading.Complaints, reading.IsRight);
    }
}
