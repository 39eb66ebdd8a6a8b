using RackController.Model;

namespace RackController.Plant;

/// <summary>What every tier gets at one moment, with all valves open that a flood opens and the trays still empty.</summary>
internal static class SteadyFlows
{
    /// <summary>The flows, bottom first, L/min.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="reservoirMm">Depth of water in its reservoir, mm.</param>
    public static double[] At(Rack rack, double reservoirMm)
    {
        var network = RackPipes.NetworkOf(rack);
        for (var index = 0; index < rack.Tiers.Length; index++)
        {
            network.Ends[index] = new TierWater(rack.Tiers[index]).EndAt(depthM: 0, FloodTrial.TakesPart(rack.Tiers[index]));
        }

        network.Solve(
            PumpLift.Running(rack.Pump.Curve, speed: 1, rack.Supply.HasCheckValve),
            (rack.Reservoir.FloorHeightMm + reservoirMm) / 1000, screenLossK: 0, FloodTrial.Viscosity);
        return [.. network.FlowM3PerS.Select(flow => flow * Litres.PerMinutePerM3PerS)];
    }
}
