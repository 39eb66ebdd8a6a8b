using System.Text.Json;

namespace RackController.Plant.Tests;

/// <summary>A steady supply network, computed with the open EPANET engine 2.3.5. The files say which equations it used.</summary>
public sealed record SupplyCase(
    string Name, double RoughnessMm, double KinematicViscosityM2s, bool? CheckValves, SupplyCase.PumpData Pump,
    SupplyCase.PipeData[] Segments, SupplyCase.TierData[] Tiers, SupplyCase.ExpectedData? Expected)
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    public static IEnumerable<SupplyCase> All() =>
        Read("supply-networks.json").Concat(Read("supply-networks-more.json"));

    /// <summary>The network of the case, its ends set.</summary>
    internal SupplyNetwork Network()
    {
        var network = new SupplyNetwork(
            [.. Segments.Select(pipe => Pipe(pipe.LengthM, pipe.DiameterMm, pipe.MinorK))],
            [.. Tiers.Select(tier => Pipe(tier.BranchLengthM, tier.BranchDiameterMm, tier.MinorK))]);
        for (var index = 0; index < Tiers.Length; index++)
        {
            var tier = Tiers[index];
            network.Ends[index] = new BranchEnd(
                tier.Open, tier.SurfaceHeightM ?? tier.OutletHeightM, CheckValves ?? true ? 0 : 1);
        }

        return network;
    }

    /// <summary>The pump of the case, running or stopped.</summary>
    internal PumpLift Lift() => Pump.StoppedPassage is { } passage && Pump.Running == false
        ? PumpLift.Stopped(Pipe(passage.LengthM, passage.DiameterMm, passage.MinorK), hasCheckValve: false)
        : PumpLift.Running(
            new RackController.Model.PumpCurve(Pump.H0M, Pump.QMaxLpm, Pump.Exponent ?? 2), speed: 1, hasCheckValve: false);

    private Pipe Pipe(double lengthM, double diameterMm, double minorK) =>
        new(lengthM, diameterMm / 1000, minorK, RoughnessMm / 1000);

    private static SupplyCase[] Read(string file)
    {
        using var stream = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Cases", file));
        return JsonSerializer.Deserialize<CaseFile>(stream, Web)!.Cases;
    }

    private sealed record CaseFile(SupplyCase[] Cases);

    public sealed record PumpData(
        double H0M, double QMaxLpm, double? Exponent, bool? Running, PipeData? StoppedPassage);

    public sealed record PipeData(double LengthM, double DiameterMm, double MinorK);

    public sealed record TierData(
        double OutletHeightM, double? SurfaceHeightM, double BranchLengthM, double BranchDiameterMm, double MinorK, bool Open);

    public sealed record ExpectedData(double PumpFlowLpm, double[] TierFlowLpm);
}
