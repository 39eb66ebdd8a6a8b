namespace RackController.Plant;

/// <summary>Constants of nature and of water, in SI units.</summary>
internal static class Physics
{
    /// <summary>Standard acceleration of gravity, m/s2 (CGPM 1901).</summary>
    public const double GravityMPerS2 = 9.80665;

    /// <summary>Heat that one kilogram of water takes up per kelvin, J/(kg K), near 20 degrees Celsius.</summary>
    public const double WaterHeatCapacityJPerKgK = 4184;

    /// <summary>Heat that evaporates one kilogram of water, J/kg: 2.45 MJ/kg, as FAO-56 takes it (from memory).</summary>
    public const double EvaporationHeatJPerKg = 2.45e6;

    private const double ZeroCelsiusK = 273.15;

    /// <summary>Dynamic viscosity of liquid water at 0.1 MPa, Pa s: the four-term formula of IAPWS SR6-08 (2011), as quoted by
    /// the library iapws.</summary>
    /// <param name="celsius">-20 to 110 degrees Celsius.</param>
    public static double Viscosity(double celsius)
    {
        var t = (celsius + ZeroCelsiusK) / 300;
        return 1e-6 * (280.68 * Math.Pow(t, -1.9) + 511.45 * Math.Pow(t, -7.7) + 61.131 * Math.Pow(t, -19.6)
            + 0.45903 * Math.Pow(t, -40));
    }

    /// <summary>Density of water at one atmosphere, kg/m3, within 0.05 from 0 to 35 degrees Celsius (McCutcheon et al.,
    /// Handbook of Hydrology 1993, from memory).</summary>
    /// <param name="celsius">0 to 40 degrees Celsius.</param>
    public static double Density(double celsius)
    {
        var fromDensest = celsius - 3.9863;
        return 1000 * (1 - (celsius + 288.9414) / (508929.2 * (celsius + 68.12963)) * fromDensest * fromDensest);
    }

    /// <summary>Kinematic viscosity of water, m2/s.</summary>
    /// <param name="celsius">0 to 40 degrees Celsius.</param>
    public static double KinematicViscosity(double celsius) => Viscosity(celsius) / Density(celsius);
}
