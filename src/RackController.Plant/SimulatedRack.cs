using RackController.Model;

namespace RackController.Plant;

/// <summary>One rack of a simulated site: lets its loads and the room act on its dynamics, and knows what can be seen of it.</summary>
internal sealed class SimulatedRack
{
    // Less water on the floor than this does not bridge a leak rope.
    private const double RopeWetL = 0.02;

    private readonly LoadElectrics[] loads;
    private readonly LoadElectrics?[] lights;
    private readonly LoadElectrics?[] valves;
    private readonly List<LoadElectrics> fans;
    private readonly List<LoadElectrics> aerators;
    private readonly RackCurves curves;
    private readonly LevelWatch watch;
    private Threshold floorWet;

    // Of all that was ever spilled, what somebody has mopped up.
    private double moppedM3;

    public SimulatedRack(Rack rack, LoadElectrics[] loads, PlantStart start)
    {
        Rack = rack;
        this.loads = loads;
        lights = [.. rack.Tiers.Select(tier => tier.Light is { } light ? loads[light.Index] : null)];
        valves = [.. rack.Tiers.Select(tier => tier.Valve is { } valve ? loads[valve.Index] : null)];
        fans = [.. loads.Where(load => load.Load.Rack == rack.Id && load.Load.Kind == LoadKind.Fan)];
        aerators = [.. loads.Where(load => load.Load.Rack == rack.Id && load.Load.Kind == LoadKind.Aerator)];
        Light = new LightSums(rack.Tiers.Length, start.At);
        Inputs = new RackInputs(rack.Tiers.Length);
        Dynamics = new RackDynamics(rack, start);
        Dynamics.Take(Inputs);
        curves = new RackCurves(Dynamics);
        watch = new LevelWatch(Dynamics, curves);
        floorWet = watch.Add(RackQuantity.Spilled, null, RopeWetL);
        Watch(RackQuantity.ReservoirDepth, null, rack.Reservoir.PumpIntakeMm);
        foreach (var tier in rack.Tiers)
        {
            Watch(RackQuantity.TrayDepth, tier.Number, tier.Tray.RimDepthMm);
        }
    }

    public Rack Rack { get; }

    /// <summary>What acts on it; in force once <see cref="Take"/> is called.</summary>
    public RackInputs Inputs { get; }

    public RackDynamics Dynamics { get; }

    /// <summary>The end of the time for which nothing more need be asked: a level is passed, or the step in hand ends.</summary>
    public MonotonicTime Horizon => MonotonicTime.Earlier(Dynamics.KnownUntil, watch.Next);

    /// <summary>Share of its speed that a worn pump keeps: 1 when new.</summary>
    public double PumpSpeedKept { get; set; } = 1;

    /// <summary>Water poured in from outside less water taken away, m3.</summary>
    public double BroughtM3 { get; private set; }

    /// <summary>Water on the floor: spilled and not mopped up, m3.</summary>
    public double OnFloorM3 => Dynamics.Part(Dynamics.Layout.Spilled) - moppedM3;

    /// <summary>Whether there is enough of it to wet a leak rope.</summary>
    public bool IsFloorWet => floorWet.IsReached;

    /// <summary>Light that each tier's crop has had.</summary>
    public LightSums Light { get; }

    /// <summary>Watches for a quantity passing a level.</summary>
    /// <param name="quantity">Which.</param>
    /// <param name="tierNumber">Tier, from 1; null for the whole rack.</param>
    /// <param name="level">The level, in the unit of the quantity.</param>
    public Threshold Watch(RackQuantity quantity, int? tierNumber, double level) => watch.Add(quantity, tierNumber - 1, level);

    /// <summary>The value of a quantity now, in its unit.</summary>
    /// <param name="quantity">Which.</param>
    /// <param name="tierNumber">Tier, from 1; null for the whole rack.</param>
    public double Value(RackQuantity quantity, int? tierNumber) => quantity switch
    {
        RackQuantity.TrayDepth => Dynamics.TrayDepthM(tierNumber!.Value - 1) * 1000,
        RackQuantity.ReservoirDepth => Dynamics.ReservoirDepthM * 1000,
        RackQuantity.PumpFlow => Dynamics.Rate(Dynamics.Layout.Pumped) * Litres.PerMinutePerM3PerS,
        _ => curves.Of(quantity, tierNumber - 1).At(Dynamics.Share),
    };

    /// <summary>What the crop of a tier gives off now, kg/s.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double TranspiredKgPerS(int index) =>
        Dynamics.Climate.ThirstKgPerS(index, Dynamics.State) * Dynamics.Water.SuppliedShare(index, Dynamics.State);

    /// <summary>The air of the room is this and stays so.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    public void SetRoom(double celsius, double vapourKPa)
    {
        Inputs.RoomCPerS = 0;
        Inputs.RoomVapourKPaPerS = 0;
        Dynamics.Take(Inputs);
        Dynamics.SetRoom(celsius, vapourKPa);
    }

    /// <summary>The air of the room changes evenly from what it is.</summary>
    /// <param name="celsius">Temperature that it goes to.</param>
    /// <param name="vapourKPa">Vapour pressure that it goes to, kPa.</param>
    /// <param name="seconds">How long it takes, above 0.</param>
    public void LetRoomRun(double celsius, double vapourKPa, double seconds)
    {
        Inputs.RoomCPerS = (celsius - Dynamics.State[Dynamics.Layout.RoomC]) / seconds;
        Inputs.RoomVapourKPaPerS = (vapourKPa - Dynamics.State[Dynamics.Layout.RoomVapourKPa]) / seconds;
        Dynamics.Take(Inputs);
    }

    /// <summary>Somebody mops the floor.</summary>
    public void Mop()
    {
        moppedM3 = Dynamics.State[Dynamics.Layout.Spilled];
        floorWet = watch.Add(RackQuantity.Spilled, null, moppedM3 * Litres.PerM3 + RopeWetL);
    }

    /// <summary>Water comes into the reservoir, or leaves it as far as there is any.</summary>
    /// <param name="volume">m3; negative leaves.</param>
    public void Bring(double volume)
    {
        var moved = Math.Max(volume, -Dynamics.State[Dynamics.Layout.Reservoir]);
        BroughtM3 += moved;
        Dynamics.Bring(moved);
    }

    /// <summary>Takes over what loads and faults do now, after any of them may have changed.</summary>
    public void Take()
    {
        var pump = loads[Rack.Pump.Load.Index];
        Inputs.PumpW = pump.PowerW;
        Inputs.PumpSpeed = PumpSpeedKept * pump.SpeedShare;
        Inputs.FanRuns = false;
        foreach (var fan in fans)
        {
            Inputs.FanRuns |= fan.Works;
        }

        Inputs.AeratorW = 0;
        foreach (var aerator in aerators)
        {
            Inputs.AeratorW += aerator.PowerW;
        }

        for (var index = 0; index < lights.Length; index++)
        {
            Inputs.ValveOpen[index] = valves[index] is not { Works: false };
            Inputs.LightW[index] = lights[index]?.PowerW ?? 0;
            Inputs.Ppfd[index] = lights[index] is { Powered: true } ? Rack.Tiers[index].PpfdUmolPerM2S : 0;
        }

        Light.Shine(Inputs.Ppfd, Dynamics.Now);
        Dynamics.Take(Inputs);
    }

    /// <summary>Lets time pass, not beyond <see cref="Horizon"/>.</summary>
    /// <returns>Whether a level was passed.</returns>
    public bool MoveTo(MonotonicTime time)
    {
        Dynamics.MoveTo(time);
        return watch.Reach();
    }
}
