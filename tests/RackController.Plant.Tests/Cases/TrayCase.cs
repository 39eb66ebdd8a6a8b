using System.Text.Json;

namespace RackController.Plant.Tests;

/// <summary>Tray levels over time: closed forms, and a whole flood computed with an independent integrator on top of the open
/// EPANET engine 2.3.5. The file says which equations it used.</summary>
public sealed record TrayCase(
    string Name, TrayCase.SupplyData? Supply, TrayCase.ReservoirData? Reservoir, TrayCase.TrayData[] Trays, double[][] PumpOnS,
    double[]? InflowLpm, double? DrainStackLpm, double LengthS, TrayCase.ExpectedData Expected)
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    public static TrayCase Named(string name)
    {
        using var stream = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Cases", "tray-cycles.json"));
        return JsonSerializer.Deserialize<CaseFile>(stream, Web)!.Cases.Single(candidate => candidate.Name == name);
    }

    private sealed record CaseFile(TrayCase[] Cases);

    public sealed record SupplyData(
        SupplyCase.PumpData Pump, SupplyCase.PipeData[] Segments, SupplyCase.TierData[] Tiers);

    public sealed record ReservoirData(double AreaM2);

    public sealed record TrayData(
        double LengthM, double WidthM, double EdgeM, WeepData Weep, StandpipeData? Standpipe, double StartDepthM, double FloorM);

    public sealed record WeepData(double DiameterM);

    public sealed record StandpipeData(double DiameterM, double RimM);

    public sealed record ExpectedData(
        double[] SampleS, double[][] DepthM, double[]? ReservoirFallM, double[] PumpedL, MarkData[] Marks,
        double? ClosedFormFinalDepthM);

    public sealed record MarkData(int Tray, double DepthM, bool Rising, double[] AtS);
}
