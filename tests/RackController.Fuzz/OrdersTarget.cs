using NodaTime;
using RackController.PlanFiles;

namespace RackController.Fuzz;

/// <summary>The orders file, beside racks and crops that are right.</summary>
internal sealed class OrdersTarget : Target
{
    private readonly string path;

    /// <summary>Prepares the folder: orders name racks and crops as seen from where they are.</summary>
    /// <param name="ground">A folder to write inputs to.</param>
    public OrdersTarget(string ground)
        : base("orders")
    {
        var folder = Directory.CreateDirectory(Path.Combine(ground, "orders")).FullName;
        path = Path.Combine(folder, "orders.yaml");
        foreach (var name in (string[])["demo-three-racks.yaml", "demo-first-rack.yaml", "crops.yaml"])
        {
            File.Copy(Repository.File($"config/{name}"), Path.Combine(folder, name), overwrite: true);
        }
    }

    /// <inheritdoc/>
    public override void Read(byte[] input)
    {
        File.WriteAllBytes(path, input);
        var reading = OrdersReader.Read(path, null, _ => new LocalDate(2026, 3, 2));
        ComplaintRules.Hold(reading.Complaints, reading.Season is not null);
    }
}
