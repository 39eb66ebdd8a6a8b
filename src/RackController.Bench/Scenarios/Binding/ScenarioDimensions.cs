using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>The quantities that only scenarios know.</summary>
internal static class ScenarioDimensions
{
    /// <summary>Base unit mol/m2/d.</summary>
    public static Dimension DailyLight { get; } = new(
        "a daily light integral", "12 mol/m2/d", [new("mol/m2/d", value => value), new("mol/m²/d", value => value, false)]);

    /// <summary>Base unit mg/L.</summary>
    public static Dimension Concentration { get; } = new("a concentration", "6 mg/L", [new("mg/L", value => value)]);

    /// <summary>Base unit mS/cm.</summary>
    public static Dimension Conductivity { get; } = new(
        "a conductivity", "1.2 mS/cm",
        [new("mS/cm", value => value), new("µS/cm", value => value / 1000), new("uS/cm", value => value / 1000, false)]);

    /// <summary>Base unit kPa.</summary>
    public static Dimension VapourPressure { get; } = new(
        "a vapour pressure", "0.8 kPa", [new("kPa", value => value), new("hPa", value => value / 10)]);
}
