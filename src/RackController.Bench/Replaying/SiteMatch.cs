using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Finds the parts of one site again on another, by their names.</summary>
internal sealed class SiteMatch
{
    private readonly ImmutableArray<RackId?> racks;
    private readonly ImmutableArray<LoadId?> loads;
    private readonly ImmutableArray<SensorId?> sensors;

    /// <summary>Matches names with the parts of a site.</summary>
    /// <param name="names">What the parts are called where they are counted.</param>
    /// <param name="site">The site on which they are looked for.</param>
    public SiteMatch(PartNames names, Site site)
    {
        racks = Find(names.Racks, PartNames.Of(site).Racks, place => new RackId(place));
        loads = Find(names.Loads, PartNames.Of(site).Loads, place => new LoadId(place));
        sensors = Find(names.Sensors, PartNames.Of(site).Sensors, place => new SensorId(place));
    }

    /// <summary>The sensor with a number; null when the other site has none.</summary>
    public SensorId? Sensor(int number) => number < sensors.Length ? sensors[number] : null;

    /// <summary>The load with a number; null when the other site has none.</summary>
    public LoadId? Load(int number) => number < loads.Length ? loads[number] : null;

    /// <summary>A request of one site as one of the other; null when it has no such rack.</summary>
    public OperatorRequest? Request(OperatorRequest request) => request switch
    {
        FloodNow ask => Rack(ask.Rack) is { } rack ? ask with { Rack = rack } : null,
        Stop { Rack: { } asked } ask => Rack(asked) is { } rack ? ask with { Rack = rack } : null,
        Resume { Rack: { } asked } ask => Rack(asked) is { } rack ? ask with { Rack = rack } : null,
        SkipNextFlood ask => Rack(ask.Rack) is { } rack ? ask with { Rack = rack } : null,
        HoldForService ask => Rack(ask.Rack) is { } rack ? ask with { Rack = rack } : null,
        EndServiceHold ask => Rack(ask.Rack) is { } rack ? ask with { Rack = rack } : null,
        SetTierInUse ask => Rack(ask.Rack) is { } rack ? ask with { Rack = rack } : null,
        _ => request,
    };

    private RackId? Rack(RackId rack) => rack.Index < racks.Length ? racks[rack.Index] : null;

    private static ImmutableArray<TId?> Find<TId>(ImmutableArray<string> names, ImmutableArray<string> there, Func<int, TId> id)
        where TId : struct =>
        [.. names.Select(name => there.IndexOf(name) is >= 0 and var place ? id(place) : (TId?)null)];
}
