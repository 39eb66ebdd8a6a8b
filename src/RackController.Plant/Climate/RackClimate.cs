using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Air and warmth of one rack: the air of each tier, the temperature of the water, and how much of the water becomes vapour. The heat
/// that vapour takes with it comes from where the water was: from the lit leaves and so from the tier's air, or from the water.
/// </summary>
internal sealed class RackClimate
{
    // A 10 x 20 in tray.
    private const double InsertTrayAreaM2 = 0.254 * 0.508;

    // Lid on, holes for pipes and cables; an assumption of ours.
    private const double OpenShareOfReservoir = 0.1;
    private const double WaterKgPerM3 = 1000;

    private readonly Rack rack;
    private readonly RackLayout layout;
    private readonly RackInputs inputs;
    private readonly double[] cropAreaM2;
    private readonly double[] openAreaM2;
    private readonly double cropFactor;
    private readonly double psychrometricKPaPerK;

    public RackClimate(Rack rack, RackLayout layout, RackInputs inputs, PlantStart start)
    {
        this.rack = rack;
        this.layout = layout;
        this.inputs = inputs;
        cropAreaM2 = [.. rack.Tiers.Select(tier => tier.Tray.Contents.InsertTrays * InsertTrayAreaM2)];
        openAreaM2 = [.. rack.Tiers.Select((tier, index) => Math.Max(0, tier.Tray.AreaM2 - cropAreaM2[index]))];
        cropFactor = start.CropFactor;
        psychrometricKPaPerK = Atmosphere.PsychrometricKPaPerK(Atmosphere.PressureKPa(start.AltitudeM));
    }

    /// <summary>Speed of the air at the canopies, m/s.</summary>
    public double WindMPerS => inputs.FanRuns ? Canopy.FannedMPerS : Canopy.StillMPerS;

    /// <summary>Puts in what is there at the start.</summary>
    public void Fill(Span<double> state, PlantStart start)
    {
        state[layout.WaterC] = start.WaterC;
        state[layout.RoomC] = start.RoomC;
        state[layout.RoomVapourKPa] = HumidAir.SaturationKPa(start.RoomC) * start.RoomHumidityPercent / 100;
        for (var index = 0; index < layout.Tiers; index++)
        {
            state[layout.AirC(index)] = state[layout.RoomC];
            state[layout.VapourKPa(index)] = state[layout.RoomVapourKPa];
        }
    }

    /// <summary>Lets water come into the reservoir that is as warm as the room; the water itself has yet to move.</summary>
    /// <param name="state">The rack's state.</param>
    /// <param name="volumeM3">Not below 0.</param>
    public void Bring(Span<double> state, double volumeM3)
    {
        var all = FreeWaterM3(state) + volumeM3;
        state[layout.WaterC] += all > 0 ? volumeM3 / all * (state[layout.RoomC] - state[layout.WaterC]) : 0;
    }

    /// <summary>What the crop of a tier gives off while it has water enough, kg/s.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="state">The rack's state.</param>
    public double ThirstKgPerS(int index, ReadOnlySpan<double> state) =>
        cropFactor * cropAreaM2[index] * Canopy.TranspirationKgPerM2S(
            Canopy.AbsorbedWPerM2(inputs.Ppfd[index]), state[layout.AirC(index)], state[layout.VapourKPa(index)], WindMPerS,
            psychrometricKPaPerK);

    /// <summary>Temperature of a tier's leaves, degrees Celsius.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="state">The rack's state.</param>
    /// <param name="transpiredKgPerS">What its crop gives off.</param>
    public double LeafC(int index, ReadOnlySpan<double> state, double transpiredKgPerS) => Canopy.LeafC(
        Canopy.AbsorbedWPerM2(inputs.Ppfd[index]), cropAreaM2[index] > 0 ? transpiredKgPerS / cropAreaM2[index] : 0,
        state[layout.AirC(index)], WindMPerS);

    /// <summary>Adds how fast air and water warm and the air moistens, and tells the water how much of it becomes vapour.</summary>
    public void Rates(ReadOnlySpan<double> state, Span<double> rates, RackWater water)
    {
        rates[layout.RoomC] = inputs.RoomCPerS;
        rates[layout.RoomVapourKPa] = inputs.RoomVapourKPaPerS;
        var roomC = state[layout.RoomC];
        var roomKPa = state[layout.RoomVapourKPa];
        var waterC = state[layout.WaterC];
        var saturationKPa = HumidAir.SaturationKPa(waterC);
        var heatW = WaterWarmth.FromPumpW(inputs.PumpW, waterC) + WaterWarmth.FromRoomW(roomC, waterC);
        for (var index = 0; index < layout.Tiers; index++)
        {
            heatW += Tier(index, state, rates, water, saturationKPa);
        }

        var open = OpenShareOfReservoir * rack.Reservoir.AreaM2
            * TierWater.FadeAt(water.ReservoirDepthM(state[layout.Reservoir]))
            * OpenWater.EvaporationKgPerM2S(saturationKPa, roomKPa, 0);
        water.EvaporationM3PerS = open / WaterKgPerM3;
        heatW -= open * Physics.EvaporationHeatJPerKg;
        rates[layout.WaterC] = WaterWarmth.WarmingKPerS(heatW, FreeWaterM3(state));
    }

    // Says how much heat the water takes from this tier's air, W.
    private double Tier(int index, ReadOnlySpan<double> state, Span<double> rates, RackWater water, double saturationKPa)
    {
        var airC = state[layout.AirC(index)];
        var vapourKPa = state[layout.VapourKPa(index)];
        var thirst = ThirstKgPerS(index, state);
        var transpired = thirst * water.SuppliedShare(index, state);
        var wet = TierWater.FadeAt(water.TrayDepthM(index, state[RackLayout.Tray(index)]));
        var open = wet * openAreaM2[index] * OpenWater.EvaporationKgPerM2S(saturationKPa, vapourKPa, WindMPerS);
        var intoWaterW = wet * WaterWarmth.TrayWPerM2K * rack.Tiers[index].Tray.AreaM2 * (airC - state[layout.WaterC]);
        water.ThirstM3PerS[index] = thirst / WaterKgPerM3;
        water.TrayEvaporationM3PerS[index] = open / WaterKgPerM3;
        rates[layout.AirC(index)] = TierAir.WarmingKPerS(
            airC, state[layout.RoomC], inputs.LightW[index] - transpired * Physics.EvaporationHeatJPerKg - intoWaterW, inputs.FanRuns);
        rates[layout.VapourKPa(index)] = TierAir.MoisteningKPaPerS(
            vapourKPa, state[layout.RoomVapourKPa], airC, transpired + open, inputs.FanRuns);
        return intoWaterW - open * Physics.EvaporationHeatJPerKg;
    }

    private double FreeWaterM3(ReadOnlySpan<double> state)
    {
        var volume = state[layout.Reservoir];
        for (var index = 0; index < layout.Tiers; index++)
        {
            volume += state[RackLayout.Tray(index)];
        }

        return volume;
    }
}
