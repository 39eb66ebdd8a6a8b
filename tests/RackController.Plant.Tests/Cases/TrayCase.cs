namespace RackController.Plant.Tests;

/// <summary>Tray levels over time: closed forms, and whole floods computed with an independent integrator on top of the open
/// EPANET engine 2.3.5. The files say which equations it used.</summary>
public sealed record TrayCase(
    string Name, TrayCase.SupplyData? Supply, TrayCase.ReservoirData? Reservoir, TrayCase.TrayData[] Trays, double[][] PumpOnS,
    double[]? InflowLpm, double? DrainStackLpm, double LengthS, TrayCase.ExpectedData Expected)
{
    /// <summary>Every case of every file, by file and name.</summary>
    public static IReadOnlyDictionary<string, TrayCase> All { get; } = CaseFiles.Read<TrayCase>("tray", tray => tray.Name);

    /// <summary>The one case with this name.</summary>
    public static TrayCase Named(string name) => All.Values.Single(tray => tray.Name == name);

    public sealed record SupplyData(
        double RoughnessMm, double KinematicViscosityM2s, bool? CheckValves, SupplyCase.PumpData Pump,
        SupplyCase.PipeData[] Segments, SupplyCase.TierData[] Tiers);

    public sealed record ReservoirData(double AreaM2);

    public sealed record TrayData(
        double LengthM, double WidthM, double EdgeM, double EdgeWeirC, double Displaced, double DisplacedToM, WeepData? Weep,
        StandpipeData? Standpipe, double StartDepthM, double FloorM)
    {
        /// <summary>Free water at a depth, m3.</summary>
        public double VolumeM3(double depthM) => LengthM * WidthM * (depthM - Displaced * Math.Min(depthM, DisplacedToM));
    }

    public sealed record WeepData(double DiameterM, double Cd);

    public sealed record StandpipeData(double DiameterM, double RimM, double WeirC, double OrificeCd);

    public sealed record ExpectedData(
        double[] SampleS, double[][] DepthM, double[]? ReservoirFallM, double[] PumpedL, double[]? SpilledL, MarkData[] Marks,
        double? ClosedFormFinalDepthM);

    public sealed record MarkData(int Tray, double DepthM, bool Rising, double[] AtS);
}
