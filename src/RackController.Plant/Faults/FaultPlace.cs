namespace RackController.Plant;

/// <summary>What a fault happens to, and so which identity of a <see cref="Fault"/> must be set.</summary>
public enum FaultPlace
{
    /// <summary>The whole site: no identity.</summary>
    Site,

    /// <summary>A rack.</summary>
    Rack,

    /// <summary>A tier: its rack and its number.</summary>
    Tier,

    /// <summary>A rack that has a float in its pump's wire.</summary>
    FloatCutout,

    /// <summary>A rack that has a time relay in its pump's wire.</summary>
    TimeCutout,

    /// <summary>A circuit.</summary>
    Circuit,

    /// <summary>A load.</summary>
    Load,

    /// <summary>A load with a motor: a pump, a fan or an aerator.</summary>
    Motor,

    /// <summary>A tier valve.</summary>
    Valve,

    /// <summary>A contact that a float moves, or a leak rope or supply sense.</summary>
    Contact,

    /// <summary>A sensor that measures a value.</summary>
    MeasuringSensor,

    /// <summary>Any sensor.</summary>
    Sensor,
}
