namespace RackController.Plant;

/// <summary>
/// How far a quarter-turn ball valve is closed for a minor loss: K 0.05 open, 5.5 a third closed, 200 two thirds closed
/// (slideplayer.com/amp/8745401, listing Mott, Crowe, Cengel), with the logarithm of K drawn straight between and beyond.
/// Makes differ: a setting to begin with.
/// </summary>
public static class BallValve
{
    private const double OpenK = 0.05;
    private const double ThirdClosedK = 5.5;
    private const double TwoThirdsClosedK = 200;
    private const double ThirdOfATurn = 30;
    private const double MostDegrees = 85;

    /// <summary>Degrees of its 90 by which it is closed; 0 open, never quite shut.</summary>
    /// <param name="minorLossK">The loss that it is to add, from 0.</param>
    public static double ClosedDegrees(double minorLossK)
    {
        if (minorLossK <= OpenK)
        {
            return 0;
        }

        var thirds = minorLossK <= ThirdClosedK
            ? Math.Log(minorLossK / OpenK) / Math.Log(ThirdClosedK / OpenK)
            : 1 + Math.Log(minorLossK / ThirdClosedK) / Math.Log(TwoThirdsClosedK / ThirdClosedK);
        return Math.Min(MostDegrees, ThirdOfATurn * thirds);
    }
}
