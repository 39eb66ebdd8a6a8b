using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What a run did to the water of one reservoir at its worst.</summary>
internal sealed class ReservoirRecorder(Rack rack)
{
    private double lowestL = double.PositiveInfinity;
    private double warmestC = double.NegativeInfinity;
    private double lowestOxygenMgPerL = double.PositiveInfinity;
    private double conductivityMsPerCm;

    public void Look(IObserved now)
    {
        lowestL = Math.Min(lowestL, now.ReservoirL(rack.Id));
        warmestC = Math.Max(warmestC, now.Value(rack.Id, RackQuantity.WaterTemperature, null));
        lowestOxygenMgPerL = Math.Min(lowestOxygenMgPerL, now.Value(rack.Id, RackQuantity.DissolvedOxygen, null));
        conductivityMsPerCm = now.Value(rack.Id, RackQuantity.Conductivity, null);
    }

    public ReservoirTotals Record() => new(lowestL, warmestC, lowestOxygenMgPerL, conductivityMsPerCm);
}
