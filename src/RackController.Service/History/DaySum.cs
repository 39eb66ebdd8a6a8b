using NodaTime;

namespace RackController.Service;

/// <summary>What is summed up of a day.</summary>
public enum DayFigure
{
    /// <summary>What a sensor said: least, mean and greatest, in the unit of its kind.</summary>
    Measured,

    /// <summary>How long a load was told to be on, hours.</summary>
    HoursOn,

    /// <summary>What it took by its nameplate, kWh.</summary>
    EnergyKWh,

    /// <summary>How many floods of a rack began.</summary>
    Floods,

    /// <summary>How much water they took by its level sensor, litres; without one there is no such figure.</summary>
    WaterL,

    /// <summary>What a light gave its tier by its PPFD, mol/m2: the daily light integral of what stands there.</summary>
    LightMolPerM2,
}

/// <summary>One figure of one day.</summary>
/// <param name="Day">The local day.</param>
/// <param name="Subject">Of which sensor, load or rack.</param>
/// <param name="Figure">What it is.</param>
/// <param name="Least">The least of the day; the figure itself where there is but one.</param>
/// <param name="Mean">The mean of the day, or the figure itself.</param>
/// <param name="Most">The greatest of the day, or the figure itself.</param>
public sealed record DaySum(LocalDate Day, string Subject, DayFigure Figure, double Least, double Mean, double Most);
