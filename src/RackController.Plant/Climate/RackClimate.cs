using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Temperatures of one rack: the air of each tier follows the room and its light, the reservoir's water follows the room and the
/// heat of the submerged pump; each first order and solved exactly, so that long steps and short ones agree. Sampled every 10 s, as
/// slow sensors measure. Resistances and times are assumptions of ours, common practice, no source.
/// </summary>
internal sealed class RackClimate
{
    private const double AirTimeConstantS = 600;
    private const double StillAirKPerW = 0.05;
    private const double FannedAirKPerW = 0.02;
    private const double WaterLossWPerK = 8;
    private const long SampleNanoseconds = 10_000_000_000;
    private const double StillK = 0.005;

    private readonly double[] airC;
    private readonly double[] sampledAirC;
    private double waterC;

    public RackClimate(Rack rack, PlantStart start)
    {
        RoomC = start.RoomC;
        airC = [.. Enumerable.Repeat(start.RoomC, rack.Tiers.Length)];
        sampledAirC = [.. airC];
        LightW = new double[rack.Tiers.Length];
        waterC = start.WaterC;
        SampledWaterC = waterC;
        SampledAt = start.At;
    }

    /// <summary>Temperature of the room, degrees Celsius.</summary>
    public double RoomC { get; set; }

    /// <summary>Power of each tier's light now, W.</summary>
    public double[] LightW { get; }

    /// <summary>Power that the submerged pump puts into the water now, W.</summary>
    public double PumpW { get; set; }

    /// <summary>Whether a fan moves the rack's air.</summary>
    public bool FanRuns { get; set; }

    /// <summary>When the next sample is taken.</summary>
    public MonotonicTime NextSample => new(SampledAt.Nanoseconds / SampleNanoseconds * SampleNanoseconds + SampleNanoseconds);

    /// <summary>Whether the next sample will differ from this one by anything worth reading.</summary>
    public bool Moves
    {
        get
        {
            for (var index = 0; index < airC.Length; index++)
            {
                if (Math.Abs(AirEndC(index) - airC[index]) * SampleNanoseconds * 1e-9 / AirTimeConstantS > StillK)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>When the samples were taken.</summary>
    public MonotonicTime SampledAt { get; private set; }

    /// <summary>Temperature of the water when sampled, degrees Celsius.</summary>
    public double SampledWaterC { get; private set; }

    /// <summary>Temperature of the water now, degrees Celsius.</summary>
    public double WaterC => waterC;

    /// <summary>Air temperature of each tier now, degrees Celsius.</summary>
    public ReadOnlySpan<double> AirC => airC;

    /// <summary>Air temperature of each tier when sampled, degrees Celsius.</summary>
    public ReadOnlySpan<double> SampledAirC => sampledAirC;

    /// <summary>Moves on, under constant lights, fans and pump.</summary>
    /// <param name="from">The time reached.</param>
    /// <param name="to">The time to reach.</param>
    /// <param name="reservoirM3">Water in the reservoir.</param>
    /// <returns>Whether a sample was taken on the way.</returns>
    public bool Advance(MonotonicTime from, MonotonicTime to, double reservoirM3)
    {
        var sampleAt = new MonotonicTime(to.Nanoseconds / SampleNanoseconds * SampleNanoseconds);
        if (sampleAt <= from)
        {
            Move(PlantTime.Seconds(from, to), reservoirM3);
            return false;
        }

        Move(PlantTime.Seconds(from, sampleAt), reservoirM3);
        airC.CopyTo(sampledAirC, 0);
        SampledWaterC = waterC;
        SampledAt = sampleAt;
        Move(PlantTime.Seconds(sampleAt, to), reservoirM3);
        return true;
    }

    private void Move(double seconds, double reservoirM3)
    {
        if (seconds <= 0)
        {
            return;
        }

        var airLeft = Math.Exp(-seconds / AirTimeConstantS);
        for (var index = 0; index < airC.Length; index++)
        {
            var end = AirEndC(index);
            airC[index] = end + (airC[index] - end) * airLeft;
        }

        // An emptied tank still has walls: a litre of water keeps the time constant off zero.
        var heatCapacity = Physics.WaterHeatCapacityJPerKgK * 1000 * Math.Max(reservoirM3, 0.001);
        var waterEnd = RoomC + PumpW / WaterLossWPerK;
        waterC = waterEnd + (waterC - waterEnd) * Math.Exp(-seconds * WaterLossWPerK / heatCapacity);
    }

    private double AirEndC(int index) => RoomC + (FanRuns ? FannedAirKPerW : StillAirKPerW) * LightW[index];
}
