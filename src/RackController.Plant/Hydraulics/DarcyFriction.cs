namespace RackController.Plant;

/// <summary>
/// The Darcy friction factor of a full round pipe: 64/Re while laminar (Hagen-Poiseuille), Swamee and Jain (1976) from
/// Re 4000, f = 0.25 / log10(e/3.7D + 5.74/Re^0.9)^2, and between them the cubic of Dunlop, both as the EPANET engine has them
/// (src/hydcoeffs.c).
/// The named formulas differ by a third between Re 2000 and 4000, so the choice is part of the model.
/// </summary>
internal static class DarcyFriction
{
    /// <summary>Above this Reynolds number a flow is no longer laminar here.</summary>
    public const double LaminarLimit = 2000;

    private const double TurbulentFrom = 4000;
    private const double MinusTwoOverLn10 = -0.86858896380650365530;

    /// <summary>The friction factor above the laminar limit.</summary>
    /// <param name="reynolds">Reynolds number, above <see cref="LaminarLimit"/>.</param>
    /// <param name="relativeRoughness">Roughness over bore.</param>
    /// <param name="slope">Its derivative by the Reynolds number.</param>
    public static double Factor(double reynolds, double relativeRoughness, out double slope) =>
        reynolds >= TurbulentFrom
            ? SwameeJain(reynolds, relativeRoughness, out slope)
            : Dunlop(reynolds, relativeRoughness, out slope);

    private static double SwameeJain(double reynolds, double relativeRoughness, out double slope)
    {
        var viscous = 5.74 / Math.Pow(reynolds, 0.9);
        var sum = relativeRoughness / 3.7 + viscous;
        var root = MinusTwoOverLn10 * Math.Log(sum);
        var factor = 1 / (root * root);
        slope = 1.8 * factor * viscous * MinusTwoOverLn10 / (sum * root * reynolds);
        return factor;
    }

    private static double Dunlop(double reynolds, double relativeRoughness, out double slope)
    {
        // The cubic meets value and slope of Swamee-Jain at 4000 and the laminar law at 2000.
        var factor = SwameeJain(TurbulentFrom, relativeRoughness, out var slopeAt4000);
        var fb = factor * 2 + slopeAt4000 * TurbulentFrom;
        var r = reynolds / LaminarLimit;
        var c0 = 7 * factor - fb;
        var c1 = 0.128 - 17 * factor + 2.5 * fb;
        var c2 = -0.128 + 13 * factor - 2 * fb;
        var c3 = 0.032 - 3 * factor + 0.5 * fb;
        slope = (c1 + r * (2 * c2 + 3 * c3 * r)) / LaminarLimit;
        return c0 + r * (c1 + r * (c2 + r * c3));
    }
}
