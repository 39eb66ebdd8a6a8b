namespace RackController.Plant;

/// <summary>Whose standards a circuit's protection follows, by its voltage: the model has no other mark of it.</summary>
internal static class SupplyPractice
{
    private const double NorthAmericanBelowV = 150;

    /// <summary>Whether its breaker is to UL 489 and its ground-fault protection to UL 943, as on 100 to 127 V, rather than to
    /// IEC 60898-1 and IEC 61008-1.</summary>
    /// <param name="voltageV">The circuit's voltage.</param>
    public static bool IsNorthAmerican(double voltageV) => voltageV < NorthAmericanBelowV;
}
