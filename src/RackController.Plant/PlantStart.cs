using RackController.Model;

namespace RackController.Plant;

/// <summary>How a simulated site begins: what the grower would find on walking in. Every default is replaceable.</summary>
public sealed record PlantStart
{
    /// <summary>A site at rest in a temperate cellar, reservoirs filled to their normal volume, trays drained, media moist.</summary>
    public static PlantStart Default { get; } = new();

    /// <summary>Monotonic time at the start. Default zero.</summary>
    public MonotonicTime At { get; init; } = MonotonicTime.Zero;

    /// <summary>From which scatter and chatter of faulty sensors are drawn; the same seed gives the same run. Default 1.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Water in each reservoir as a share of its normal volume: 0 to what its capacity allows. Default 1.</summary>
    public double ReservoirShare { get; init; } = 1;

    /// <summary>Temperature of the reservoirs' water, degrees Celsius. Default 19.</summary>
    public double WaterC { get; init; } = 19;

    /// <summary>Temperature of the room, degrees Celsius. Default 20.</summary>
    public double RoomC { get; init; } = 20;

    /// <summary>Relative humidity of the room, %. Default 50.</summary>
    public double RoomHumidityPercent { get; init; } = 50;

    /// <summary>Height of the site above sea level, m: air is thinner there, and water holds less oxygen. Default 0.</summary>
    public double AltitudeM { get; init; }

    /// <summary>Conductivity of the solution in reservoirs and media, mS/cm at 25 degrees Celsius: 0 to 3. Default 1.</summary>
    public double ConductivityMsPerCm { get; init; } = 1;

    /// <summary>Conductivity of the water that reservoirs are topped up with, mS/cm at 25 degrees Celsius: 0 to 3. Default 0.3, a tap's;
    /// common practice, no source.</summary>
    public double TopUpMsPerCm { get; init; } = 0.3;

    /// <summary>What the crop gives off beside a full stand of grass, by its stage: 0.7 for young and 1.05 for grown small vegetables
    /// (FAO-56 table 12, from memory), 0 where nothing grows. Default 1.05.</summary>
    public double CropFactor { get; init; } = 1.05;

    /// <summary>Error that one step of the integration may leave in a level, mm: 1e-9 to 1. Default 0.002. A finer one takes more
    /// steps, and shows how much the default errs.</summary>
    public double LevelToleranceMm { get; init; } = 0.002;

    /// <summary>Which end of what their standards allow breakers and ground-fault protection sit at. Default fast.</summary>
    public BreakerEdge Breakers { get; init; } = BreakerEdge.Fast;
}
