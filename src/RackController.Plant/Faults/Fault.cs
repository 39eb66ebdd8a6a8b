using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One thing that goes wrong on a simulated rack: what, where, from when until when, how much. A value; any number may act at
/// once. Which identity must be set, and what the size means, is in <see cref="FaultCatalogue"/>.
/// </summary>
/// <param name="Kind">What goes wrong.</param>
/// <param name="From">When it begins.</param>
/// <param name="Until">When it ends; <see cref="MonotonicTime.Never"/> for what nobody repairs. What happens at once (a reservoir
/// emptied or refilled, a floor mopped, a breaker closed, a wired float reset) happens at <paramref name="From"/> and ignores it.</param>
public sealed record Fault(FaultKind Kind, MonotonicTime From, MonotonicTime Until)
{
    /// <summary>How much, in the unit of its kind; 0 where that has none.</summary>
    public double Size { get; init; }

    /// <summary>The rack, where the place is a rack or a tier.</summary>
    public RackId? Rack { get; init; }

    /// <summary>The tier's number, 1 at the bottom, where the place is a tier.</summary>
    public int? TierNumber { get; init; }

    /// <summary>The circuit, where the place is one.</summary>
    public CircuitId? Circuit { get; init; }

    /// <summary>The load, where the place is one, or its motor or valve.</summary>
    public LoadId? Load { get; init; }

    /// <summary>The sensor, where the place is one.</summary>
    public SensorId? Sensor { get; init; }

    /// <summary>What is wrong with it as a fault of a site, in words; null when nothing is.</summary>
    /// <param name="site">The site.</param>
    public string? WrongFor(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        var entry = FaultCatalogue.Entry(Kind);
        return PlaceWrong(site, entry.Place)
            ?? (Until <= From ? $"{Kind} ends before it begins" : null)
            ?? (Size >= entry.SizeMin && Size <= entry.SizeMax
                ? null
                : $"{Kind} has size {Size}: it takes {entry.SizeMin} to {entry.SizeMax} {entry.SizeUnit}".TrimEnd());
    }

    private string? PlaceWrong(Site site, FaultPlace place) => place switch
    {
        FaultPlace.Site => null,
        FaultPlace.Rack => Known(Rack?.Index, site.Racks.Length) ? null : $"{Kind} needs a rack of the site",
        FaultPlace.Tier => Known(Rack?.Index, site.Racks.Length) && Known(TierNumber - 1, site[Rack!.Value].Tiers.Length)
            ? null
            : $"{Kind} needs a rack of the site and the number of one of its tiers",
        FaultPlace.FloatCutout => Known(Rack?.Index, site.Racks.Length) && site[Rack!.Value].FloatCutout is not null
            ? null
            : $"{Kind} needs a rack with a float in its pump's wire",
        FaultPlace.TimeCutout => Known(Rack?.Index, site.Racks.Length) && site[Rack!.Value].TimeCutout is not null
            ? null
            : $"{Kind} needs a rack with a time relay in its pump's wire",
        FaultPlace.Circuit => Known(Circuit?.Index, site.Circuits.Length) ? null : $"{Kind} needs a circuit of the site",
        FaultPlace.Load => Known(Load?.Index, site.Loads.Length) ? null : $"{Kind} needs a load of the site",
        FaultPlace.Motor => IsLoad(site, LoadKind.Pump, LoadKind.Fan, LoadKind.Aerator) ? null : $"{Kind} needs a motor of the site",
        FaultPlace.Valve => IsLoad(site, LoadKind.Valve) ? null : $"{Kind} needs a tier valve of the site",
        _ => !Known(Sensor?.Index, site.Sensors.Length) ? $"{Kind} needs a sensor of the site"
            : place == FaultPlace.Contact && !site[Sensor!.Value].IsContact ? $"{Kind} needs a contact"
            : place == FaultPlace.MeasuringSensor && site[Sensor!.Value].IsContact ? $"{Kind} needs a sensor that measures"
            : null,
    };

    private bool IsLoad(Site site, params ReadOnlySpan<LoadKind> kinds) =>
        Known(Load?.Index, site.Loads.Length) && kinds.Contains(site[Load!.Value].Kind);

    private static bool Known(int? index, int count) => index >= 0 && index < count;
}
