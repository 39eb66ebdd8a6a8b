using RackController.Model;

namespace RackController.Bench;

/// <summary>The watches that every run has.</summary>
internal static class HazardWatches
{
    /// <summary>One for each kind of hazard.</summary>
    /// <param name="site">The site.</param>
    public static IHazardWatch[] Of(Site site) =>
    [
        new WaterOnTheFloor(), new PumpRunsDry(site), new PumpPastItsMaximumRun(), new CircuitOverloaded(site),
        new LightsInTheHeat(site),
    ];
}
