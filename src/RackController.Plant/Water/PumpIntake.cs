namespace RackController.Plant;

/// <summary>
/// What reaches a pump as the reservoir falls below its intake: water mixed with more and more air over a few millimetres, so that
/// a pump at its intake slurps what drains back to it and gives no more. An assumption of ours.
/// </summary>
internal readonly struct PumpIntake
{
    private const double MixedOverM = 0.005;
    private const double MinimumM = 0.0005;

    private readonly double intakeM;
    private readonly double emptyM;

    public PumpIntake(double intakeM)
    {
        this.intakeM = Math.Max(intakeM, 2 * MinimumM);
        emptyM = Math.Max(MinimumM, this.intakeM - MixedOverM);
    }

    /// <summary>Share of water in what it draws: 1 at the intake and above.</summary>
    /// <param name="depthM">Depth of the reservoir, m.</param>
    public double WaterShare(double depthM) => Math.Clamp((depthM - emptyM) / (intakeM - emptyM), 0, 1);

    /// <summary>Whether it draws air.</summary>
    /// <param name="depthM">Depth of the reservoir, m.</param>
    public bool DrawsAir(double depthM) => depthM < intakeM;
}
