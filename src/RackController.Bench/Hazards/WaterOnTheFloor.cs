namespace RackController.Bench;

/// <summary>Water on the floor, beyond the drip tray, from the first centilitre: a drip that a mop forgives is not what this is for,
/// but the simulated rack does not drip. What a drip tray holds is a nuisance and no hazard.</summary>
internal sealed class WaterOnTheFloor : IHazardWatch
{
    /// <summary>Less than this counts for nothing, L.</summary>
    public const double ToleratedL = 0.01;

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var rack in now.Site.Racks)
        {
            var spilledL = now.SpilledL(rack.Id);
            if (spilledL > ToleratedL)
            {
                book.Report(
                    now, HazardKind.WaterOnTheFloor, rack.Name, Vicinity.OfWater(rack.Id),
                    $"{rack.Name} began to lose water onto the floor ({spilledL:0.00} L so far)");
            }
        }
    }
}
