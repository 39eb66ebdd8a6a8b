using RackController.Model;

namespace RackController.Plant;

/// <summary>What every tier gets at one moment, with all valves open that a flood opens and the trays still empty.</summary>
/// <param name="FlowsLpm">The flows, bottom first, L/min.</param>
/// <param name="Duty">What the pump does for them.</param>
internal sealed record SteadyFlows(double[] FlowsLpm, PumpDuty Duty)
{
    /// <summary>Solves the supply network.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="reservoirMm">Depth of water in its reservoir, mm.</param>
    public static SteadyFlows At(Rack rack, double reservoirMm)
    {
        var network = RackPipes.NetworkOf(rack);
        var tiers = TierWater.Of(rack);
        for (var index = 0; index < tiers.Length; index++)
        {
            network.Ends[index] = tiers[index].EndAt(depthM: 0, FloodTrial.TakesPart(rack.Tiers[index]));
        }

        var lift = PumpLift.Running(rack.PumpCurveAsMeasured, speed: 1, rack.Supply.HasCheckValve);
        var surfaceM = (rack.Reservoir.FloorHeightMm + reservoirMm) / 1000;
        network.Solve(lift, surfaceM, screenLossK: 0, FloodTrial.Viscosity);
        var flow = network.FlowM3PerS.Sum();
        var top = Enumerable.Range(0, tiers.Length).Where(index => network.Ends[index].Open).DefaultIfEmpty(0)
            .MaxBy(index => network.Ends[index].HeadM);
        var headM = lift.Head(flow, FloodTrial.Viscosity, out _);
        return new SteadyFlows(
            [.. network.FlowM3PerS.Select(one => one * Litres.PerMinutePerM3PerS)],
            new PumpDuty(
                top + 1, flow * Litres.PerMinutePerM3PerS, headM, network.Ends[top].HeadM - surfaceM,
                surfaceM + headM - network.TeeHeadM[top], network.TeeHeadM[top] - network.Ends[top].HeadM));
    }
}
