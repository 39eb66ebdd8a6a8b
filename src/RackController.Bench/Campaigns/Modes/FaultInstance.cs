using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A mode at a place of a site.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Target">The place.</param>
public sealed record FaultInstance(FaultMode Mode, FaultTarget Target)
{
    /// <summary>Names it among all of its site: <c>relay welded @ north/pump</c>.</summary>
    public string Name => Target.Name.Length == 0 ? Mode.Words : $"{Mode.Words} @ {Target.Name}";

    /// <summary>Every instance of the whole catalogue that a site has, mode by mode.</summary>
    /// <param name="site">The site.</param>
    public static IEnumerable<FaultInstance> AllOf(Site site) =>
        FaultModes.All.SelectMany(mode => mode.Targets(site).Select(target => new FaultInstance(mode, target)));
}

/// <summary>An instance with everything that was left to chance.</summary>
/// <param name="Instance">The instance.</param>
/// <param name="Start">When the run begins.</param>
/// <param name="At">When it strikes, since the run began.</param>
/// <param name="Lasts">How long; zero for what happens at once.</param>
/// <param name="Size">How much, in the unit of its mode; 0 where that has none.</param>
public sealed record DrawnFault(FaultInstance Instance, Instant Start, Duration At, Duration Lasts, double Size)
{
    /// <summary>When it is over, since the run began.</summary>
    public Duration Ends => At + Lasts;

    /// <summary>What a scenario calls it.</summary>
    public string Name => Instance.Name;
}
