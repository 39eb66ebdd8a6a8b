using RackController.Model;

namespace RackController.Plant;

/// <summary>One rack of a simulated site: joins its water, climate and light, and lets its loads act on them.</summary>
internal sealed class SimulatedRack
{
    private const double RefreshViscosityAfterK = 0.1;

    // A 10 x 20 in tray.
    private const double InsertTrayAreaM2 = 0.254 * 0.508;

    private readonly LoadElectrics[] loads;
    private readonly LoadElectrics?[] lights;
    private readonly LoadElectrics?[] valves;
    private readonly List<LoadElectrics> fans;
    private double viscosityAtC = double.NaN;

    // Of all that was ever spilled, what somebody has mopped up.
    private double moppedM3;

    public SimulatedRack(Rack rack, LoadElectrics[] loads, PlantStart start)
    {
        Rack = rack;
        this.loads = loads;
        lights = [.. rack.Tiers.Select(tier => tier.Light is { } light ? loads[light.Index] : null)];
        valves = [.. rack.Tiers.Select(tier => tier.Valve is { } valve ? loads[valve.Index] : null)];
        fans = [.. loads.Where(load => load.Load.Rack == rack.Id && load.Load.Kind == LoadKind.Fan)];
        Water = new RackWater(rack, rack.Reservoir.NormalVolumeL / Litres.PerM3 * start.ReservoirShare);
        Climate = new RackClimate(rack, start);
        LightMolPerM2 = new double[rack.Tiers.Length];
        RoomVapourKPa = HumidAir.SaturationKPa(start.RoomC) * start.RoomHumidityPercent / 100;
        RefreshSlowInputs();
    }

    public Rack Rack { get; }

    public RackWater Water { get; }

    public RackClimate Climate { get; }

    /// <summary>Share of its speed that a worn pump keeps: 1 when new.</summary>
    public double PumpSpeedKept { get; set; } = 1;

    /// <summary>Light that each tier's crop has had since the start, mol/m2.</summary>
    public double[] LightMolPerM2 { get; }

    /// <summary>Water poured in from outside less water taken away, m3.</summary>
    public double BroughtM3 { get; private set; }

    /// <summary>Vapour pressure of the room, kPa.</summary>
    public double RoomVapourKPa { get; private set; }

    /// <summary>Photon flux that a tier's crop gets now, umol/m2/s.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double Ppfd(int index) => lights[index] is { Powered: true } ? Rack.Tiers[index].PpfdUmolPerM2S : 0;

    /// <summary>Water on the floor: spilled and not mopped up, m3.</summary>
    public double OnFloorM3 => Water.State[Water.Layout.Spilled] - moppedM3;

    /// <summary>Sets the air of the room.</summary>
    public void SetRoom(double celsius, double humidityPercent)
    {
        Climate.RoomC = celsius;
        RoomVapourKPa = HumidAir.SaturationKPa(celsius) * humidityPercent / 100;
        RefreshSlowInputs();
    }

    /// <summary>Somebody mops the floor.</summary>
    public void Mop() => moppedM3 = Water.State[Water.Layout.Spilled];

    /// <summary>Water comes into the reservoir, or leaves it as far as there is any.</summary>
    /// <param name="volume">m3; negative leaves.</param>
    public void Bring(double volume)
    {
        var moved = Math.Max(volume, -Water.State[Water.Layout.Reservoir]);
        BroughtM3 += moved;
        Water.Pour(Water.Layout.Reservoir, moved);
    }

    /// <summary>Takes over what the loads do now, after relays or supplies may have changed.</summary>
    public void TakeLoads()
    {
        var pump = loads[Rack.Pump.Load.Index];
        Climate.PumpW = pump.PowerW;
        Climate.FanRuns = false;
        foreach (var fan in fans)
        {
            Climate.FanRuns |= fan.Works;
        }

        var inputs = Water.Inputs;
        var speed = PumpSpeedKept * pump.SpeedShare;
        var changed = inputs.PumpSpeed != speed;
        inputs.PumpSpeed = speed;
        for (var index = 0; index < lights.Length; index++)
        {
            var open = valves[index] is not { Works: false };
            changed |= inputs.ValveOpen[index] != open;
            inputs.ValveOpen[index] = open;
            var lightW = lights[index]?.PowerW ?? 0;
            changed |= Climate.LightW[index] != lightW;
            Climate.LightW[index] = lightW;
        }

        RefreshSlowInputs();
        if (changed)
        {
            Water.Integrator.Restart();
        }
    }

    /// <summary>Moves on while no relay, supply or fault changes.</summary>
    public void Advance(MonotonicTime from, MonotonicTime to)
    {
        var seconds = PlantTime.Seconds(from, to);
        Water.Integrator.Advance(seconds);
        for (var index = 0; index < lights.Length; index++)
        {
            LightMolPerM2[index] += Ppfd(index) * seconds / 1e6;
        }

        if (Climate.Advance(from, to, Water.State[Water.Layout.Reservoir]))
        {
            RefreshSlowInputs();
        }
    }

    // Air, light and water temperature change slowly beside the water itself: what they ask of it is held for 10 s.
    private void RefreshSlowInputs()
    {
        for (var index = 0; index < lights.Length; index++)
        {
            var media = Rack.Tiers[index].Tray.Contents.InsertTrays * InsertTrayAreaM2;
            Water.Inputs.ThirstM3PerS[index] =
                media * Evaporation.OfCrop(Ppfd(index), HumidAir.DeficitKPa(Climate.AirC[index], RoomVapourKPa));
        }

        Water.Inputs.EvaporationM3PerS = Rack.Reservoir.AreaM2
            * Evaporation.OfReservoir(HumidAir.DeficitKPa(Climate.WaterC, RoomVapourKPa));
        if (!(Math.Abs(Climate.WaterC - viscosityAtC) < RefreshViscosityAfterK))
        {
            viscosityAtC = Climate.WaterC;
            Water.Inputs.Viscosity = Physics.KinematicViscosity(viscosityAtC);
            Water.Integrator.Restart();
        }
    }
}
