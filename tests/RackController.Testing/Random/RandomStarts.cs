using CsCheck;
using RackController.Plant;

namespace RackController.Testing;

/// <summary>Random ways to find a site on walking in.</summary>
public static class RandomStarts
{
    /// <summary>Any way. Temperatures are whole numbers, so that a room may stand exactly at a limit.</summary>
    public static Gen<PlantStart> Any { get; } =
        from filled in Gen.Frequency((2, Gen.Const(1.0)), (1, RandomParts.Fine(0, 1)))
        from warmth in Gen.Select(Gen.Int[5, 35], Gen.Int[5, 40], Gen.Frequency((5, Gen.Int[5, 100]), (1, Gen.Const(100))))
        from solution in Gen.Select(RandomParts.Fine(0, 3), RandomParts.Fine(0, 3), RandomParts.Fine(0, 3000))
        from cropFactor in RandomParts.Fine(0, 1.05)
        from breakers in Gen.Enum<BreakerEdge>()
        select new PlantStart
        {
            ReservoirShare = filled,
            WaterC = warmth.Item1,
            RoomC = warmth.Item2,
            RoomHumidityPercent = warmth.Item3,
            ConductivityMsPerCm = solution.Item1,
            TopUpMsPerCm = solution.Item2,
            AltitudeM = solution.Item3,
            CropFactor = cropFactor,
            Breakers = breakers,
        };
}
