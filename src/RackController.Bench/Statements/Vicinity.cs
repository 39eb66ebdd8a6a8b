using RackController.Model;

namespace RackController.Bench;

/// <summary>A part of the site, to tell which events could have to do with it.</summary>
/// <param name="Rack">The rack, if it is on one.</param>
/// <param name="Load">The load, if it is one.</param>
/// <param name="Circuit">The circuit that feeds it, if that matters.</param>
internal sealed record Vicinity(RackId? Rack, LoadId? Load, CircuitId? Circuit)
{
    public static Vicinity OfRack(RackId rack) => new(rack, null, null);

    public static Vicinity OfCircuit(CircuitId circuit) => new(null, null, circuit);

    public static Vicinity OfLoad(Site site, LoadId load) => new(site[load].Rack, load, site[load].Circuit);

    /// <summary>Other loads of the same rack or circuit switch all the time; of loads only the load itself concerns a
    /// load. Everything else of its rack or circuit does: alarms, interlocks, floods, readings.</summary>
    public bool Concerns(Site site, string subject)
    {
        var about = site.Loads.FirstOrDefault(load => load.Name == subject);
        if (about is not null)
        {
            return Load is { } load ? about.Id == load : about.Rack == Rack || about.Circuit == Circuit;
        }

        return (Rack is { } rack && IsOf(site[rack].Name, subject)) || (Circuit is { } circuit && IsOf(site[circuit].Name, subject));
    }

    private static bool IsOf(string owner, string subject) =>
        subject == owner || subject.StartsWith(owner + "/", StringComparison.Ordinal);
}
