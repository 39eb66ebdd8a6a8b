using RackController.Model;

namespace RackController.Control;

/// <summary>What interlocks may know of what a rack is about.</summary>
/// <param name="FloodNumber">Rises by one with every flood that begins.</param>
/// <param name="FilledFlood">The number of the last flood whose fill was not cut short; 0 before the first since the start.</param>
/// <param name="IsFloodWaiting">Whether a flood is due and cannot begin yet.</param>
/// <param name="FillHitItsLimit">Whether the last fill by level ended by its time limit.</param>
/// <param name="TiersOutOfUse">A bit for each tier that is out of use: bit 1 for tier 1.</param>
internal readonly record struct RackFacts(
    long FloodNumber, long FilledFlood, bool IsFloodWaiting, bool FillHitItsLimit, ulong TiersOutOfUse)
{
    /// <summary>What is seen of the water that the pump moves, or moved when it last ran.</summary>
    public FillSight Fill { get; init; }

    /// <summary>What a rack is about, after its demands were asked.</summary>
    public static RackFacts Of(Rack rack, RackDemand demand)
    {
        var outOfUse = 0UL;
        foreach (var tier in rack.Tiers)
        {
            outOfUse |= demand.IsTierInUse(tier.Number) ? 0 : 1UL << tier.Number;
        }

        return new RackFacts(
            demand.FloodNumber, demand.FilledFlood, demand.Phase == FloodPhase.Waiting, demand.FillHitItsLimit, outOfUse);
    }
}
