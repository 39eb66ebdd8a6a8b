namespace RackController.Plant;

/// <summary>
/// An upright pipe whose mouth sets the flood depth: first a circular weir, Q = C pi D H^1.5, then an orifice,
/// Q = Cd (pi D^2 / 4) sqrt(2 g H); the smaller rules. The form is that of FHWA HEC-22 for riser inlets, which takes 1.66 and
/// 0.67 (from memory). Here C is 1.7, 2 % above it, and Cd 0.6, the plain edge at powderprocess.net, Toricelli, 10 % below it:
/// a choice of ours that a grower would fit by timing a tray.
/// </summary>
internal readonly struct Standpipe
{
    private const double WeirCoefficient = 1.7;
    private const double OrificeCoefficient = 0.6;

    private readonly double mouthM;
    private readonly double weir;
    private readonly double orifice;

    public Standpipe(double heightM, double boreM)
    {
        mouthM = heightM;
        weir = WeirCoefficient * Math.PI * boreM;
        orifice = OrificeCoefficient * Math.PI * boreM * boreM / 4 * Math.Sqrt(2 * Physics.GravityMPerS2);
    }

    /// <summary>What it drains, m3/s.</summary>
    /// <param name="depthM">Depth of water over the tray's floor, m.</param>
    public double Flow(double depthM)
    {
        var head = depthM - mouthM;
        if (head <= 0)
        {
            return 0;
        }

        var root = Math.Sqrt(head);
        return Math.Min(weir * head * root, orifice * root);
    }
}
