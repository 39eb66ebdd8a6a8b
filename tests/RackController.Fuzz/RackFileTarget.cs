using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;

namespace RackController.Fuzz;

/// <summary>The rack file: whatever is in it, it is read or complained of; and what was read can be driven.</summary>
internal sealed class RackFileTarget(string ground) : Target("rack-file")
{
    private readonly string path = Path.Combine(ground, "rack.yaml");

    /// <inheritdoc/>
    public override void Read(byte[] input)
    {
        File.WriteAllBytes(path, input);
        var result = RackFileReader.Read(path);
        ComplaintRules.Hold(result.Complaints, result.Site is not null);
        if (result.Site is { } site)
        {
            _ = new RackControl(site, new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 12, 0), true), null);
        }
    }
}
