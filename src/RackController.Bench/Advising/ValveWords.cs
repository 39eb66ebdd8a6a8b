using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How the branches of a rack are to be set.</summary>
internal static class ValveWords
{
    /// <summary>What to do, tier by tier, with the turn of a ball valve that does it.</summary>
    /// <param name="before">The rack as it is.</param>
    /// <param name="after">The rack as it is to be.</param>
    public static string Of(Rack before, Rack after)
    {
        var pairs = before.Tiers.Zip(after.Tiers)
            .Where(pair => pair.First.Branch.MinorLossK != pair.Second.Branch.MinorLossK)
            .ToList();
        var settings = pairs.Select(pair => Setting(pair.Second.Number, pair.First.Branch.MinorLossK, pair.Second.Branch.MinorLossK));
        return pairs.Count == 0
            ? "leave the branches as they are"
            : $"set the minor losses of the branches: {string.Join(", ", settings)}";
    }

    private static string Setting(int tierNumber, double nowK, double thenK)
    {
        var turn = thenK > nowK ? $"; a ball valve {BallValve.ClosedDegrees(thenK - nowK):0}° closed" : "; more open";
        return $"tier {tierNumber} to {thenK:0.#} (now {nowK:0.#}{turn})";
    }
}
