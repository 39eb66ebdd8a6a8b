using BenchmarkDotNet.Attributes;
using RackController.Bench;
using RackController.Plant;

namespace RackController.Benchmarks;

/// <summary>What one solution of the supply network of five tiers costs: close to the one before, as the integration mostly asks,
/// and from far away.</summary>
public class SupplyBenchmarks
{
    private const double ViscosityM2PerS = 1.0035e-6;
    private readonly SupplyNetwork network;
    private readonly PumpLift pump;
    private bool turn;

    public SupplyBenchmarks()
    {
        var rack = FigureSites.Of(racks: 1).Racks[0];
        network = RackPipes.NetworkOf(rack);
        pump = PumpLift.Running(rack.Pump.Curve, speed: 1, rack.Supply.HasCheckValve);
        foreach (var tier in rack.Tiers)
        {
            network.Ends[tier.Number - 1] = new BranchEnd(true, tier.TrayFloorHeightMm / 1000, 0);
        }
    }

    [Benchmark]
    public void Nearby() => Solve(stepM: 1e-6);

    [Benchmark]
    public void FromFarAway() => Solve(stepM: 0.3);

    private void Solve(double stepM)
    {
        turn = !turn;
        network.Solve(pump, turn ? 0.1 : 0.1 + stepM, screenLossK: 0, ViscosityM2PerS);
    }
}
