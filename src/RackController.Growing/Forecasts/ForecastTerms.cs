using NodaTime;

namespace RackController.Growing;

/// <summary>What a forecast has to be told beside racks and plan: the solution, what things cost, what a tray weighs. What a grower does
/// not say is common practice, without a source.</summary>
public sealed record ForecastTerms
{
    /// <summary>What is assumed where nothing is said.</summary>
    public static ForecastTerms Usual { get; } = new();

    /// <summary>Conductivity that the solution is mixed to, mS/cm at 25 degrees Celsius: 0 to 3. Default 1.</summary>
    public double TargetMsPerCm { get; init; } = 1;

    /// <summary>Conductivity of the water that it is mixed with and topped up with, mS/cm: 0 to 3. Default 0.3, a tap's.</summary>
    public double TapMsPerCm { get; init; } = 0.3;

    /// <summary>How often all of the solution is changed, days: 1 to 365. Default 14.</summary>
    public int ChangeEveryDays { get; init; } = 14;

    /// <summary>How often trays and pipes are flushed with plain water, which happens at a change, days: 1 to 365. Default 28.</summary>
    public int FlushEveryDays { get; init; } = 28;

    /// <summary>When the solution was last changed; null for on the first day of the plan.</summary>
    public LocalDate? Changed { get; init; }

    /// <summary>When the racks were last flushed; null for on the first day of the plan.</summary>
    public LocalDate? Flushed { get; init; }

    /// <summary>What a 10 x 20 in insert tray weighs with wet media and a grown crop, kg: 0.1 to 30. Default 3.</summary>
    public double TrayKg { get; init; } = 3;

    /// <summary>What electricity, water and salts cost; null where nobody said, and then nothing has a cost.</summary>
    public Prices? Prices { get; init; }
}

/// <summary>Prices in the grower's own currency, which nothing converts.</summary>
/// <param name="Currency">What it is called.</param>
/// <param name="PerKWh">Of a kilowatt-hour, from 0.</param>
/// <param name="PerM3">Of a cubic metre of water with its drain, from 0.</param>
/// <param name="SaltsPerKg">Of a kilogram of dry salts, from 0.</param>
public sealed record Prices(string Currency, double PerKWh, double PerM3, double SaltsPerKg)
{
    private const double LPerM3 = 1000;
    private const double GPerKg = 1000;

    /// <summary>What it comes to.</summary>
    /// <param name="energyKWh">Electricity, kWh.</param>
    /// <param name="waterL">Water out of the tap, L.</param>
    /// <param name="saltsG">Salts put in, g.</param>
    public double Of(double energyKWh, double waterL, double saltsG) =>
        energyKWh * PerKWh + waterL / LPerM3 * PerM3 + saltsG / GPerKg * SaltsPerKg;
}
