using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>How often a relay has switched of what it is made for. Control counts that and raises the alarm; here it is only shown, as it
/// was last remembered, which may be a thousandth of its life ago.</summary>
/// <param name="Load">The load that it switches.</param>
/// <param name="Operations">How often it has switched on, from 0.</param>
public sealed record RelayLife(Load Load, long Operations)
{
    /// <summary>How much of its life is over: 1 when it counts as worn.</summary>
    public double Share => (double)Operations / Load.RatedOperations;

    /// <summary>Whether it has switched as often as it is made for.</summary>
    public bool IsWorn => Operations >= Load.RatedOperations;

    /// <summary>All relays of a site, the most worn first.</summary>
    /// <param name="site">The site.</param>
    /// <param name="memory">What its controller remembers; null for nothing.</param>
    public static ImmutableArray<RelayLife> AllOf(Site site, ControlMemory? memory)
    {
        ArgumentNullException.ThrowIfNull(site);
        return [.. site.Loads.Select(load => new RelayLife(load, RelayCount.Of(load, memory))).OrderByDescending(relay => relay.Share)];
    }
}
