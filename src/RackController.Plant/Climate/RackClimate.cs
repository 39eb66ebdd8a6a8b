using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Temperatures of one rack, and the thirst that follows from them: the air of each tier follows the room and its light, the
/// reservoir's water follows the room and the heat of the submerged pump; each first order. Resistances and times are assumptions of
/// ours, common practice, no source.
/// </summary>
internal sealed class RackClimate
{
    private const double AirTimeConstantS = 600;
    private const double StillAirKPerW = 0.05;
    private const double FannedAirKPerW = 0.02;
    private const double WaterLossWPerK = 8;

    // An emptied tank still has walls: a litre of water keeps the time constant off zero.
    private const double LeastWaterM3 = 0.001;

    // A 10 x 20 in tray.
    private const double InsertTrayAreaM2 = 0.254 * 0.508;

    private readonly Rack rack;
    private readonly RackLayout layout;
    private readonly RackInputs inputs;
    private readonly double[] mediaAreaM2;

    public RackClimate(Rack rack, RackLayout layout, RackInputs inputs)
    {
        this.rack = rack;
        this.layout = layout;
        this.inputs = inputs;
        mediaAreaM2 = [.. rack.Tiers.Select(tier => tier.Tray.Contents.InsertTrays * InsertTrayAreaM2)];
    }

    /// <summary>Puts in what is there at the start.</summary>
    public void Fill(Span<double> state, PlantStart start)
    {
        state[layout.WaterC] = start.WaterC;
        for (var index = 0; index < rack.Tiers.Length; index++)
        {
            state[layout.AirC(index)] = start.RoomC;
        }
    }

    /// <summary>Adds how fast temperatures change, and says how much water air and light draw.</summary>
    public void Rates(ReadOnlySpan<double> state, Span<double> rates, RackWater water)
    {
        for (var index = 0; index < mediaAreaM2.Length; index++)
        {
            var airC = state[layout.AirC(index)];
            var warmedK = (inputs.FanRuns ? FannedAirKPerW : StillAirKPerW) * inputs.LightW[index];
            rates[layout.AirC(index)] += (inputs.RoomC + warmedK - airC) / AirTimeConstantS;
            water.ThirstM3PerS[index] =
                mediaAreaM2[index] * Evaporation.OfCrop(inputs.Ppfd[index], HumidAir.DeficitKPa(airC, inputs.RoomVapourKPa));
        }

        var waterC = state[layout.WaterC];
        var heatCapacity = Physics.WaterHeatCapacityJPerKgK * 1000 * Math.Max(state[layout.Reservoir], LeastWaterM3);
        rates[layout.WaterC] += (inputs.PumpW + WaterLossWPerK * (inputs.RoomC - waterC)) / heatCapacity;
        water.EvaporationM3PerS =
            rack.Reservoir.AreaM2 * Evaporation.OfReservoir(HumidAir.DeficitKPa(waterC, inputs.RoomVapourKPa));
    }
}
