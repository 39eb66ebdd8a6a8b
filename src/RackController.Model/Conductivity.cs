namespace RackController.Model;

/// <summary>
/// The scale between salts in water and its electrical conductivity: proportional below 3 mS/cm, which is an approximation that meters
/// make too. It is the middle one of the three scales in use (0.5, 0.64 and 0.7 g/L for each mS/cm; from memory).
/// </summary>
public static class Conductivity
{
    /// <summary>Salts that make a litre of water conduct 1 mS/cm more at 25 degrees Celsius, g/L.</summary>
    public const double GPerLPerMsPerCm = 0.64;

    /// <summary>The most that the proportion is used for, mS/cm.</summary>
    public const double MostMsPerCm = 3;
}
