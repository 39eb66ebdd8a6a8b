using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>One flood of a rack's water alone: reservoir at its normal volume, trays empty, media moist, everything whole.</summary>
internal sealed class FloodTrial
{
    // Marks are found between two looks by a straight line, which so short a time makes exact to a tenth of a second. A fill until
    // full ends at a look.
    private const double LookEveryS = 2;
    private const double SettledBelowMPerS = 1e-3 / 60_000;
    private const double LongestS = 4 * 3600;

    private static double WaterC => PlantStart.Default.WaterC;

    private readonly Rack rack;
    private readonly RackDynamics water;
    private readonly RackInputs inputs;
    private readonly TierWater[] parts;
    private readonly double?[] readsFullMm;
    private readonly double lowestWorkingMm;

    private FloodTrial(Rack rack, RackFloats floats)
    {
        this.rack = rack;
        water = new RackDynamics(rack, PlantStart.Default with { RoomC = WaterC, RoomHumidityPercent = 100, CropFactor = 0 });
        inputs = new RackInputs(rack.Tiers.Length);
        parts = TierWater.Of(rack);
        readsFullMm = [.. rack.Tiers.Select(floats.FullMm)];
        Filled = new Duration?[parts.Length];
        Drained = new Duration?[parts.Length];
        lowestWorkingMm = floats.LowestWorkingMm;
    }

    /// <summary>Viscosity of the water, m2/s, at the temperature that a simulated site begins with.</summary>
    public static double Viscosity { get; } = Physics.KinematicViscosity(WaterC);

    /// <summary>When each tray counted as filled, from the pump's start; null for one that never did.</summary>
    public Duration?[] Filled { get; }

    /// <summary>When each tray counted as drained, from the pump's stop; null for one that never did.</summary>
    public Duration?[] Drained { get; }

    /// <summary>When the reservoir was down to its lowest working level, from the pump's start; null when it never was.</summary>
    public Duration? RunsLow { get; private set; }

    /// <summary>When the fill was over, from the pump's start.</summary>
    public Duration FillEnds { get; private set; }

    /// <summary>Whether a flood reaches a tier: out of use, only a valve keeps the water away.</summary>
    public static bool TakesPart(Tier tier) => tier.InUse || tier.Valve is null;

    /// <summary>The pump runs until nothing changes any more, from a reservoir so wide that its level stays.</summary>
    public static FloodTrial LeftRunning(Rack rack, RackFloats floats)
    {
        const int times = 1000;
        var tank = rack.Reservoir;
        var wide = tank with { CapacityL = times * tank.CapacityL, NormalVolumeL = times * tank.NormalVolumeL };
        var trial = new FloodTrial(rack with { Reservoir = wide }, floats);
        trial.Pump(0, LongestS, trial.IsSettled);
        return trial;
    }

    /// <summary>The pump runs as the rack's schedule says, then the trays drain.</summary>
    public static FloodTrial AsPlanned(Rack rack, RackFloats floats)
    {
        var trial = new FloodTrial(rack, floats);
        var floods = rack.Schedule.Floods;
        trial.FillEnds = Duration.FromSeconds(trial.Pump(0, floods.Fill.Limit.TotalSeconds, trial.AllReadFull));
        trial.Pump(trial.FillEnds.TotalSeconds, (trial.FillEnds + floods.Soak).TotalSeconds, () => false);
        trial.Drain();
        return trial;
    }

    /// <summary>Depth of a tray now, mm.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double DepthMm(int index) => water.TrayDepthM(index) * 1000;

    /// <summary>What the weep of a filled tray takes, L/min.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double HoldsFullLpm(int index) =>
        parts[index].Drain(rack.Tiers[index].Tray.FilledMm / 1000, weepBlocked: false, standpipeOpenShare: 1) * Litres.PerMinutePerM3PerS;

    /// <summary>What weep and standpipe of a tray carry into the drain stack now, L/min.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="heldBack">Whether the stack takes less than they would carry.</param>
    public double CarriedLpm(int index, out bool heldBack)
    {
        var drains = parts.Select((part, tray) => part.Drain(water.TrayDepthM(tray), weepBlocked: false, standpipeOpenShare: 1)).ToArray();
        var would = drains[index];
        new ReturnStack(rack).Share(drains, openShare: 1);
        heldBack = drains[index] < would;
        return drains[index] * Litres.PerMinutePerM3PerS;
    }

    // Lets the pump run from a time since its start to another, until something is so or the reservoir runs low; says until when.
    private double Pump(double fromS, double toS, Func<bool> isOver)
    {
        Turn(pump: true, valvesOpen: true);
        var depths = new double[parts.Length];
        var nowS = fromS;
        while (nowS < toS && RunsLow is null && !(nowS > fromS && isOver()))
        {
            Note(depths);
            var stepS = Math.Min(LookEveryS, toS - nowS);
            Advance(stepS);
            for (var index = 0; index < parts.Length; index++)
            {
                Filled[index] ??= Crossing(depths[index], DepthMm(index), rack.Tiers[index].Tray.FilledMm, nowS, stepS);
            }

            nowS += stepS;
            RunsLow = water.ReservoirDepthM * 1000 <= lowestWorkingMm ? Duration.FromSeconds(nowS) : null;
        }

        return nowS;
    }

    private void Drain()
    {
        // What runs back through the supply needs open valves: without a check valve they stay so.
        Turn(pump: false, valvesOpen: !rack.Supply.HasCheckValve);
        var depths = new double[parts.Length];
        for (var index = 0; index < parts.Length; index++)
        {
            Drained[index] = DepthMm(index) < FloodTray.DrainedBelowMm ? Duration.Zero : null;
        }

        for (var passedS = 0.0; passedS < LongestS && Drained.Contains(null) && !IsSettled(); passedS += LookEveryS)
        {
            Note(depths);
            Advance(LookEveryS);
            for (var index = 0; index < parts.Length; index++)
            {
                Drained[index] ??= Crossing(depths[index], DepthMm(index), FloodTray.DrainedBelowMm, passedS, LookEveryS);
            }
        }
    }

    private void Turn(bool pump, bool valvesOpen)
    {
        inputs.PumpSpeed = pump ? 1 : 0;
        for (var index = 0; index < parts.Length; index++)
        {
            inputs.ValveOpen[index] = rack.Tiers[index].Valve is null || (valvesOpen && rack.Tiers[index].InUse);
        }

        water.Take(inputs);
    }

    private void Advance(double seconds) => water.AdvanceTo(PlantTime.After(water.Now, seconds));

    private bool IsSettled() => Enumerable.Range(0, parts.Length).All(index =>
        Math.Abs(water.Rate(RackLayout.Tray(index))) < SettledBelowMPerS * parts[index].AreaAtM2(water.TrayDepthM(index)));

    // As the fill waits for it: every tray that can tell, if there is any.
    private bool AllReadFull() => readsFullMm.Any(mark => mark is not null)
        && !readsFullMm.Where((mark, index) => DepthMm(index) < mark).Any();

    private void Note(double[] depthsMm)
    {
        for (var index = 0; index < depthsMm.Length; index++)
        {
            depthsMm[index] = DepthMm(index);
        }
    }

    private static Duration? Crossing(double beforeMm, double afterMm, double markMm, double fromS, double stepS) =>
        (beforeMm - markMm) * (afterMm - markMm) <= 0 && beforeMm != afterMm
            ? Duration.FromSeconds(fromS + stepS * (markMm - beforeMm) / (afterMm - beforeMm))
            : null;
}
