namespace RackController.Plant;

/// <summary>
/// A small hole in a tray's floor that is always open: an orifice, Q = Cd a sqrt(2 g h), Cd 0.62 for a sharp edge (King and
/// Brater, Handbook of Hydraulics, from memory; 0.6 for a plain edge at powderprocess.net, Toricelli). The last film of 0.01 mm
/// runs off in proportion to its depth, since surface tension holds it, and its last ten-thousandth of a millimetre stays: a tray
/// at rest is at rest.
/// </summary>
internal readonly struct Weep
{
    private const double DischargeCoefficient = 0.62;
    private const double FilmM = 1e-5;
    private const double RestsBelowM = 1e-7;

    private readonly double flowPerRootDepth;

    public Weep(double boreM) =>
        flowPerRootDepth = DischargeCoefficient * Math.PI * boreM * boreM / 4 * Math.Sqrt(2 * Physics.GravityMPerS2);

    /// <summary>What it drains, m3/s.</summary>
    /// <param name="depthM">Depth of water over it, m, not negative.</param>
    public double Flow(double depthM) =>
        depthM < RestsBelowM ? 0 : flowPerRootDepth * (depthM >= FilmM ? Math.Sqrt(depthM) : depthM / Math.Sqrt(FilmM));
}
