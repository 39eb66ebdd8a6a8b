using System.Collections.Immutable;

namespace RackController.Plant;

/// <summary>
/// What is really so on one simulated rack, for judges and reports: a live, read-only view. No sensor fault touches it, and no
/// controller may see it.
/// </summary>
public sealed class RackTruth
{
    private readonly SimulatedRack rack;

    internal RackTruth(SimulatedRack rack)
    {
        this.rack = rack;
        Tiers = [.. Enumerable.Range(0, rack.Rack.Tiers.Length).Select(index => new TierTruth(rack, index))];
    }

    /// <summary>The tiers, bottom first.</summary>
    public ImmutableArray<TierTruth> Tiers { get; }

    /// <summary>The value of a quantity that can be watched, in its unit.</summary>
    /// <param name="quantity">Which.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom; null for the whole rack.</param>
    public double Value(RackQuantity quantity, int? tierNumber) => rack.Value(quantity, tierNumber);

    /// <summary>How many steps its integration has taken since the start.</summary>
    public long Steps => rack.Dynamics.Steps;

    /// <summary>Water in the reservoir, L.</summary>
    public double ReservoirVolumeL => Litre(rack.Dynamics.Layout.Reservoir);

    /// <summary>Depth of water in the reservoir, mm.</summary>
    public double ReservoirLevelMm => rack.Dynamics.ReservoirDepthM * 1000;

    /// <summary>Temperature of the reservoir's water, degrees Celsius.</summary>
    public double WaterTemperatureC => rack.Dynamics.State[rack.Dynamics.Layout.WaterC];

    /// <summary>Oxygen dissolved in the reservoir, mg/L.</summary>
    public double DissolvedOxygenMgPerL => rack.Value(RackQuantity.DissolvedOxygen, null);

    /// <summary>Oxygen that the reservoir would hold if it were saturated with air, mg/L.</summary>
    public double SaturatedOxygenMgPerL => rack.Dynamics.Solutes.SaturatedGPerM3(rack.Dynamics.State);

    /// <summary>Electrical conductivity of the reservoir, mS/cm at 25 degrees Celsius.</summary>
    public double ConductivityMsPerCm => rack.Value(RackQuantity.Conductivity, null);

    /// <summary>Temperature of the room, degrees Celsius.</summary>
    public double RoomTemperatureC => State[Layout.RoomC];

    /// <summary>Relative humidity of the room, %.</summary>
    public double RoomHumidityPercent => HumidAir.RelativePercent(RoomTemperatureC, State[Layout.RoomVapourKPa]);

    /// <summary>Whether the pump turns: powered, with voltage enough, and not seized.</summary>
    public bool PumpTurns => rack.Inputs.PumpTurns;

    /// <summary>Whether the pump turns and draws air.</summary>
    public bool PumpRunsDry => PumpTurns && rack.Dynamics.Water.DrawsAir(rack.Dynamics.ReservoirDepthM);

    /// <summary>Flow through the pump, L/min; negative while trays drain back through it.</summary>
    public double PumpFlowLpm => rack.Value(RackQuantity.PumpFlow, null);

    /// <summary>All that passed the pump since the start, less what ran back, L.</summary>
    public double PumpedL => Litre(rack.Dynamics.Layout.Pumped);

    /// <summary>All that was spilled since the start, into the drip tray and onto the floor, L.</summary>
    public double SpilledL => Litre(rack.Dynamics.Layout.Spilled);

    /// <summary>Water in the drip tray, L; 0 without one.</summary>
    public double DripTrayL => rack.Spilled.InTrayM3(rack.SpilledM3) * Litres.PerM3;

    /// <summary>What lies on the floor: spilled beyond the drip tray and not mopped up, L.</summary>
    public double OnFloorL => rack.Spilled.OnFloorM3(rack.SpilledM3) * Litres.PerM3;

    /// <summary>All that ran onto the floor since the start, L.</summary>
    public double OntoFloorL => rack.Value(RackQuantity.OntoFloor, null);

    /// <summary>When the wired float first opened the pump's wire; null when it never did, or there is none.</summary>
    public Model.MonotonicTime? FloatCutoutFirstOpenedAt => rack.Cutout?.FirstOpenedAt;

    /// <summary>Whether the wired float holds the pump's wire open.</summary>
    public bool IsFloatCutoutOpen => rack.Cutout is { IsOpen: true };

    /// <summary>When the time relay first opened the pump's wire; null when it never did, or there is none.</summary>
    public Model.MonotonicTime? TimeCutoutFirstOpenedAt => rack.Pump.TimeRelay?.FirstOpenedAt;

    /// <summary>Whether the time relay holds the pump's wire open.</summary>
    public bool IsTimeCutoutOpen => rack.Pump.TimeRelay is { IsOpen: true };

    /// <summary>All that left reservoir and trays as vapour since the start, L.</summary>
    public double EvaporatedL => Litre(rack.Dynamics.Layout.Evaporated);

    /// <summary>All that the crop gave off since the start, L.</summary>
    public double TranspiredL => Litre(rack.Dynamics.Layout.Transpired);

    /// <summary>Water used since the start, L: evaporated and transpired.</summary>
    public double WaterUsedL => EvaporatedL + TranspiredL;

    /// <summary>Water brought from outside since the start, less water taken away, L.</summary>
    public double BroughtL => rack.BroughtM3 * Litres.PerM3;

    /// <summary>Water that fills the supply pipes, L.</summary>
    public double PipesL => Litre(rack.Dynamics.Layout.Pipes);

    /// <summary>All water of the rack wherever it is or went, less what was brought, L: reservoir, pipes, trays, media, drip
    /// tray, floor and vapour.
    /// It never changes.</summary>
    public double BalanceL
    {
        get
        {
            var sum = ReservoirVolumeL + PipesL + SpilledL + EvaporatedL + TranspiredL - BroughtL;
            foreach (var tier in Tiers)
            {
                sum += tier.VolumeL + tier.MediaWaterL;
            }

            return sum;
        }
    }

    /// <summary>Salts that the crop has taken up since the start, g.</summary>
    public double CropSaltsG => State[Layout.CropSalts];

    /// <summary>Salts brought with water from outside since the start, less those taken away with it, g.</summary>
    public double BroughtSaltsG => rack.Dynamics.Solutes.BroughtSaltsG;

    /// <summary>All salts of the rack wherever they are or went, less what was brought, g: reservoir, pipes, trays, media, crop and
    /// floor. It never changes.</summary>
    public double SaltBalanceG
    {
        get
        {
            var sum = State[Layout.Salts] + State[Layout.PipeSalts] + State[Layout.SpilledSalts] + CropSaltsG - BroughtSaltsG;
            for (var index = 0; index < Layout.Tiers; index++)
            {
                sum += State[Layout.TraySalts(index)] + State[Layout.MediaSalts(index)];
            }

            return sum;
        }
    }

    private RackLayout Layout => rack.Dynamics.Layout;

    private ReadOnlySpan<double> State => rack.Dynamics.State;

    private double Litre(int store) => rack.Dynamics.Part(store) * Litres.PerM3;
}
