namespace RackController.Growing;

/// <summary>What a batch had while it stood in the light, as far as is on record; null for what no sensor or lamp tells.</summary>
/// <param name="Days">Days that are on record.</param>
/// <param name="Floods">Floods of the racks that it stood on; where its trays stood on several, by trays.</param>
/// <param name="LightMolPerM2">Photons at the canopy by the lamps' PPFD, mol/m2.</param>
/// <param name="AirLeastC">The lowest air temperature beside it, °C.</param>
/// <param name="AirMeanC">The mean air temperature beside it, °C.</param>
/// <param name="AirMostC">The highest air temperature beside it, °C.</param>
public sealed record GrownSums(int Days, double Floods, double? LightMolPerM2, double? AirLeastC, double? AirMeanC, double? AirMostC)
{
    /// <summary>Of nothing that is on record.</summary>
    public static readonly GrownSums None = new(0, 0, null, null, null, null);
}
