using RackController.Model;

namespace RackController.Plant.Tests;

/// <summary>A steady supply network, computed with the open EPANET engine 2.3.5. The files say which equations it used.</summary>
public sealed record SupplyCase(
    string Name, double RoughnessMm, double KinematicViscosityM2s, bool? CheckValves, SupplyCase.PumpData Pump,
    SupplyCase.PipeData[] Segments, SupplyCase.TierData[] Tiers, SupplyCase.ExpectedData Expected)
{
    /// <summary>Every case of every file, by file and name.</summary>
    public static IReadOnlyDictionary<string, SupplyCase> All { get; } =
        CaseFiles.Read<SupplyCase>("supply", supply => supply.Name);

    /// <summary>The network of the case, its ends set.</summary>
    internal SupplyNetwork Network()
    {
        var network = new SupplyNetwork(
            [.. Segments.Select(pipe => PipeOf(pipe.LengthM, pipe.DiameterMm, pipe.MinorK))],
            [.. Tiers.Select(tier => PipeOf(tier.BranchLengthM, tier.BranchDiameterMm, tier.MinorK))]);
        for (var index = 0; index < Tiers.Length; index++)
        {
            var tier = Tiers[index];
            network.Ends[index] = new BranchEnd(
                tier.Open, tier.SurfaceHeightM ?? tier.OutletHeightM, CheckValves ?? true ? 0 : 1);
        }

        return network;
    }

    /// <summary>The pump of the case, running or stopped.</summary>
    internal PumpLift Lift()
    {
        if (Pump.Running ?? true)
        {
            return PumpLift.Running(Pump.Curve, speed: 1, hasCheckValve: false);
        }

        return Pump.StoppedPassage is { } passage
            ? PumpLift.Stopped(PipeOf(passage.LengthM, passage.DiameterMm, passage.MinorK), hasCheckValve: false)
            : PumpLift.Stopped(default, hasCheckValve: true);
    }

    private Pipe PipeOf(double lengthM, double diameterMm, double minorK) =>
        new(lengthM, diameterMm / 1000, minorK, RoughnessMm / 1000);

    public sealed record PumpData(double H0M, double QMaxLpm, double? Exponent, bool? Running, PipeData? StoppedPassage)
    {
        internal PumpCurve Curve => new(H0M, QMaxLpm, Exponent ?? 2);
    }

    public sealed record PipeData(double LengthM, double DiameterMm, double MinorK);

    public sealed record TierData(
        double OutletHeightM, double? SurfaceHeightM, double BranchLengthM, double BranchDiameterMm, double MinorK, bool Open);

    public sealed record ExpectedData(double PumpFlowLpm, double[] TierFlowLpm);
}
