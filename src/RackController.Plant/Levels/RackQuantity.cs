namespace RackController.Plant;

/// <summary>What of a rack can be watched for passing a level.</summary>
public enum RackQuantity
{
    /// <summary>Depth of water in a tier's tray, mm.</summary>
    TrayDepth,

    /// <summary>Depth of water in the reservoir, mm.</summary>
    ReservoirDepth,

    /// <summary>Water spilled from trays, pipes and reservoir since the start, L.</summary>
    Spilled,

    /// <summary>Spilled water that lies in the drip tray or on the floor and that nobody has mopped up, L.</summary>
    Lying,

    /// <summary>Depth of water in the drip tray, mm.</summary>
    DripTrayDepth,

    /// <summary>Water lost onto the floor since the start, beyond the drip tray, L.</summary>
    OntoFloor,

    /// <summary>Flow through the pump, L/min.</summary>
    PumpFlow,

    /// <summary>Temperature of the reservoir's water, degrees Celsius.</summary>
    WaterTemperature,

    /// <summary>Oxygen dissolved in the reservoir, mg/L.</summary>
    DissolvedOxygen,

    /// <summary>Electrical conductivity of the reservoir, mS/cm at 25 degrees Celsius.</summary>
    Conductivity,

    /// <summary>Temperature of a tier's air, or of all tiers' on average, degrees Celsius.</summary>
    AirTemperature,

    /// <summary>Relative humidity of a tier's air, or of all tiers' on average, %.</summary>
    AirHumidity,

    /// <summary>Vapour pressure deficit of a tier's air, or of all tiers' on average, kPa.</summary>
    VapourDeficit,
}
