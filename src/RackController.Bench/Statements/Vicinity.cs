using RackController.Model;

namespace RackController.Bench;

/// <summary>A part of the site, to tell which events could have to do with it.</summary>
/// <param name="Rack">The rack, if it is on one.</param>
/// <param name="Circuit">The circuit that feeds it, if that matters.</param>
/// <param name="IsNear">Whether a load of that rack or circuit has to do with it: others switch all the time.</param>
internal sealed record Vicinity(RackId? Rack, CircuitId? Circuit, Func<Load, bool> IsNear)
{
    /// <summary>The water of a rack.</summary>
    public static Vicinity OfWater(RackId rack) => new(rack, null, load => load.Kind is LoadKind.Pump or LoadKind.Valve);

    /// <summary>The reservoir of a rack and what lives in it.</summary>
    public static Vicinity OfReservoir(RackId rack) =>
        new(rack, null, load => load.Kind is LoadKind.Pump or LoadKind.Valve or LoadKind.Aerator);

    /// <summary>The light and air of a tier.</summary>
    public static Vicinity OfTier(RackId rack, int tierNumber) => new(
        rack, null, load => load.Kind == LoadKind.Fan || (load.Kind == LoadKind.Light && load.TierNumber == tierNumber));

    /// <summary>Everything on a circuit.</summary>
    public static Vicinity OfCircuit(CircuitId circuit) => new(null, circuit, _ => true);

    /// <summary>One load, its rack and its circuit.</summary>
    public static Vicinity OfLoad(Site site, LoadId load) => new(site[load].Rack, site[load].Circuit, other => other.Id == load);

    /// <summary>Whether an event about this subject has to do with it: a load that is near, or anything else of its rack
    /// or circuit, such as an alarm, an interlock, a flood or a reading; also of a circuit that feeds a load of the rack that
    /// is near, because without supply it does nothing.</summary>
    public bool Concerns(Site site, string subject)
    {
        var about = site.Loads.FirstOrDefault(load => load.Name == subject);
        return about is not null
            ? (about.Rack == Rack || about.Circuit == Circuit) && IsNear(about)
            : (Rack is { } rack && IsOf(site[rack].Name, subject)) || (Circuit is { } circuit && IsOf(site[circuit].Name, subject))
                || site.Loads.Any(load => load.Rack == Rack && IsNear(load) && IsOf(site[load.Circuit].Name, subject));
    }

    private static bool IsOf(string owner, string subject) =>
        subject == owner || subject.StartsWith(owner + "/", StringComparison.Ordinal);
}
