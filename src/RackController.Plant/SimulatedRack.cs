using RackController.Model;

namespace RackController.Plant;

/// <summary>One rack of a simulated site: lets its loads and the room act on its dynamics, and knows what can be seen of it.</summary>
internal sealed class SimulatedRack
{
    // Less water round it than this does not bridge a leak rope.
    private const double RopeWetL = 0.02;

    private readonly LoadElectrics[] loads;
    private readonly LoadElectrics?[] lights;
    private readonly LoadElectrics?[] valves;
    private readonly List<LoadElectrics> fans;
    private readonly List<LoadElectrics> aerators;
    private readonly RackCurves curves;
    private readonly LevelWatch watch;
    private readonly Threshold ropeWet;

    public SimulatedRack(Rack rack, LoadElectrics[] loads, PlantStart start)
    {
        Rack = rack;
        this.loads = loads;
        lights = [.. rack.Tiers.Select(tier => tier.Light is { } light ? loads[light.Index] : null)];
        valves = [.. rack.Tiers.Select(tier => tier.Valve is { } valve ? loads[valve.Index] : null)];
        fans = [.. loads.Where(load => load.Load.Rack == rack.Id && load.Load.Kind == LoadKind.Fan)];
        aerators = [.. loads.Where(load => load.Load.Rack == rack.Id && load.Load.Kind == LoadKind.Aerator)];
        ValveHeld = new bool?[rack.Tiers.Length];
        Light = new LightSums(rack.Tiers.Length, start.At);
        Inputs = new RackInputs(rack.Tiers.Length);
        Dynamics = new RackDynamics(rack, start);
        Dynamics.Take(Inputs);
        Spilled = new SpilledWater(rack.DripTray);
        curves = new RackCurves(Dynamics, Spilled);
        watch = new LevelWatch(Dynamics, curves);
        ropeWet = watch.Add(RackQuantity.Lying, null, RopeWetL);
        Watch(RackQuantity.ReservoirDepth, null, rack.Reservoir.PumpIntakeMm);
        foreach (var tier in rack.Tiers)
        {
            Watch(RackQuantity.TrayDepth, tier.Number, tier.Tray.RimDepthMm);
        }

        Cutout = rack.FloatCutout is { HeightMm: var heightMm } cutout
            ? new CutoutSwitch(
                FloatAt(cutout, heightMm), FloatAt(cutout, Math.Max(heightMm - CutoutSwitch.DifferentialMm, heightMm / 2)),
                Pump)
            : null;
    }

    public Rack Rack { get; }

    /// <summary>What its pump draws, and what is in its wire.</summary>
    public LoadElectrics Pump => loads[Rack.Pump.Load.Index];

    /// <summary>What acts on it; in force once <see cref="Take"/> is called.</summary>
    public RackInputs Inputs { get; }

    public RackDynamics Dynamics { get; }

    /// <summary>The end of the time for which nothing more need be asked: a level is passed, or the step in hand ends.</summary>
    public MonotonicTime Horizon => MonotonicTime.Earlier(Dynamics.KnownUntil, watch.Next);

    /// <summary>Share of its speed that a worn pump keeps: 1 when new.</summary>
    public double PumpSpeedKept { get; set; } = 1;

    /// <summary>How a fault holds each tier's valve: open or shut; null where it does as its coil does.</summary>
    public bool?[] ValveHeld { get; }

    /// <summary>Whether no air comes out of the aerators.</summary>
    public bool AirStoneBlocked { get; set; }

    /// <summary>Water poured in from outside less water taken away, m3.</summary>
    public double BroughtM3 { get; private set; }

    /// <summary>Where the water lies that it has spilled.</summary>
    public SpilledWater Spilled { get; }

    /// <summary>All that it ever spilled, m3.</summary>
    public double SpilledM3 => Dynamics.Part(Dynamics.Layout.Spilled);

    /// <summary>Whether enough of that lies about to wet a leak rope.</summary>
    public bool IsRopeWet => ropeWet.IsReached;

    /// <summary>The float in the pump's wire; null where none is.</summary>
    public CutoutSwitch? Cutout { get; }

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
        RackQuantity.DripTrayDepth => Spilled.DepthM(SpilledM3) * 1000,
        RackQuantity.Lying => (SpilledM3 - Spilled.MoppedM3) * Litres.PerM3,
        RackQuantity.OntoFloor => Spilled.OntoFloorM3(SpilledM3) * Litres.PerM3,
        RackQuantity.Spilled => SpilledM3 * Litres.PerM3,
        RackQuantity.PumpFlow => Dynamics.Rate(Dynamics.Layout.Pumped) * Litres.PerMinutePerM3PerS,
        _ => curves.Of(quantity, tierNumber - 1).At(Dynamics.Share),
    };

    /// <summary>Illuminance at a tier's canopy now, lx. The room is dark, and no tier lights another.</summary>
    /// <param name="tierNumber">Tier, from 1.</param>
    public double Lux(int tierNumber) => Inputs.Ppfd[tierNumber - 1] / Rack.Tier(tierNumber).PpfdPerLux;

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

    /// <summary>Somebody mops up drip tray and floor.</summary>
    public void Mop()
    {
        Spilled.Mop(SpilledM3);

        // What lies about is another at once, so that nothing found out about the step in hand stands.
        Dynamics.Pour(Dynamics.Layout.Spilled, 0);
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
        Inputs.PumpW = Pump.PowerW;
        Inputs.PumpSpeed = PumpSpeedKept * Pump.SpeedShare;
        Inputs.FanRuns = false;
        foreach (var fan in fans)
        {
            Inputs.FanRuns |= fan.Works;
        }

        Inputs.AeratorW = 0;
        foreach (var aerator in aerators)
        {
            Inputs.AeratorW += AirStoneBlocked || !aerator.Works ? 0 : aerator.PowerW;
        }

        for (var index = 0; index < lights.Length; index++)
        {
            Inputs.ValveOpen[index] = ValveHeld[index] ?? valves[index] is not { Works: false };
            Inputs.LightW[index] = lights[index]?.PowerW ?? 0;
            Inputs.Ppfd[index] = lights[index] is { Powered: true } ? Rack.Tiers[index].PpfdUmolPerM2S : 0;
        }

        Light.Shine(Inputs.Ppfd, Dynamics.Now);
        Dynamics.Take(Inputs);
    }

    /// <summary>Lets the float in the pump's wire act on the water as it stands.</summary>
    /// <returns>Whether it opened the wire.</returns>
    public bool FollowCutout() => Cutout is { } cutout && cutout.Follow(Dynamics.Now);

    /// <summary>Lets time pass, not beyond <see cref="Horizon"/>.</summary>
    /// <returns>Whether a level was passed.</returns>
    public bool MoveTo(MonotonicTime time)
    {
        Dynamics.MoveTo(time);
        return watch.Reach();
    }

    private Threshold FloatAt(FloatCutout cutout, double heightMm) => cutout.TierNumber is { } tier
        ? Watch(RackQuantity.TrayDepth, tier, heightMm)
        : Watch(RackQuantity.DripTrayDepth, null, heightMm);
}
