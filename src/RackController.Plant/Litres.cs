namespace RackController.Plant;

/// <summary>The edge between SI inside and the units that people read.</summary>
internal static class Litres
{
    /// <summary>Litres in a cubic metre.</summary>
    public const double PerM3 = 1000;

    /// <summary>Litres a minute in one cubic metre a second.</summary>
    public const double PerMinutePerM3PerS = 60_000;
}
