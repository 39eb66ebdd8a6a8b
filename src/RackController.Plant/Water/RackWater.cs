using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// All the water of one rack: how fast it moves from where to where. Every rate that takes water from one store gives it to
/// another, so the stores' sum stays what it was, and salts go with the water. Water takes no time on its way: what drains is back in
/// the reservoir at once, and pipes that a check valve does not keep full fill and empty as the pump starts and stops (they take a
/// second or two).
/// </summary>
internal sealed class RackWater
{
    // The way through a still impeller; an assumption of ours, common practice, no source.
    private const double StillPassageLengthM = 0.05;
    private const double StillPassageLossK = 12;

    // The viscosity of water falls by 2.5 % a kelvin, so that this much is less than a flow of a litre a minute could show.
    private const double SameViscosityWithinK = 0.05;

    private readonly Rack rack;
    private readonly RackLayout layout;
    private readonly RackInputs inputs;
    private readonly TierWater[] tiers;
    private readonly ReturnStack stack;
    private readonly PumpIntake intake;
    private readonly SupplyNetwork network;
    private readonly PumpCurve pumpCurve;
    private readonly Pipe stillPassage;
    private readonly double pipesM3;
    private double viscosity;
    private double viscosityAtC = double.NaN;

    public RackWater(Rack rack, RackLayout layout, RackInputs inputs)
    {
        this.rack = rack;
        this.layout = layout;
        this.inputs = inputs;
        tiers = TierWater.Of(rack);
        Flows = new TierFlows(tiers.Length);
        DepthsM = new double[tiers.Length];
        stack = new ReturnStack(rack);
        intake = new PumpIntake(rack.Reservoir.PumpIntakeMm / 1000);
        network = RackPipes.NetworkOf(rack);
        pumpCurve = rack.PumpCurveAsMeasured;
        pipesM3 = RackPipes.ContentM3(rack);
        stillPassage = new Pipe(
            StillPassageLengthM, rack.Supply.BoreMm / 1000, StillPassageLossK, Pipe.DrawnTubingRoughnessM);
        ThirstM3PerS = new double[tiers.Length];
        TrayEvaporationM3PerS = new double[tiers.Length];
    }

    /// <summary>What each tier's crop would give off if it had water enough; set before <see cref="Rates"/>.</summary>
    public double[] ThirstM3PerS { get; }

    /// <summary>What leaves the free water of each tray as vapour; set before <see cref="Rates"/>.</summary>
    public double[] TrayEvaporationM3PerS { get; }

    /// <summary>What leaves the reservoir as vapour; set before <see cref="Rates"/>.</summary>
    public double EvaporationM3PerS { get; set; }

    /// <summary>How the water of each tier moves, as <see cref="Rates"/> found it.</summary>
    public TierFlows Flows { get; }

    /// <summary>Depth of each tray, m, as <see cref="Rates"/> found it.</summary>
    public double[] DepthsM { get; }

    /// <summary>Puts in what is there at the start: a filled reservoir, pipes as the last flood left them, moist media.</summary>
    /// <param name="state">The rack's state.</param>
    /// <param name="reservoirM3">Water in the reservoir.</param>
    public void Fill(Span<double> state, double reservoirM3)
    {
        state[layout.Reservoir] = reservoirM3;
        state[layout.Pipes] = rack.Supply.HasCheckValve ? pipesM3 : 0;
        for (var index = 0; index < tiers.Length; index++)
        {
            state[layout.Media(index)] = tiers[index].Media.CapacityM3;
        }
    }

    /// <summary>Depth of a tray that holds a volume, m.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="volumeM3">Free water.</param>
    public double TrayDepthM(int index, double volumeM3) => tiers[index].DepthM(volumeM3);

    /// <summary>Free water in a tray at a depth, m3.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="depthM">Depth, m.</param>
    public double TrayVolumeM3(int index, double depthM) => tiers[index].VolumeM3(depthM);

    /// <summary>Area of free water in a tray at a depth, m2.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="depthM">Depth, m.</param>
    public double TrayAreaM2(int index, double depthM) => tiers[index].AreaAtM2(depthM);

    /// <summary>Depth of the reservoir that holds a volume, m.</summary>
    /// <param name="volumeM3">Free water.</param>
    public double ReservoirDepthM(double volumeM3) => Math.Max(0, volumeM3) / rack.Reservoir.AreaM2;

    /// <summary>Free water in the reservoir at a depth, m3.</summary>
    /// <param name="depthM">Depth, m.</param>
    public double ReservoirVolumeM3(double depthM) => depthM * rack.Reservoir.AreaM2;

    /// <summary>Whether a pump that turns draws air.</summary>
    /// <param name="reservoirDepthM">Depth of the reservoir, m.</param>
    public bool DrawsAir(double reservoirDepthM) => intake.DrawsAir(reservoirDepthM);

    /// <summary>Share of its thirst that the crop of a tier can draw.</summary>
    /// <param name="index">Tier, from 0.</param>
    /// <param name="state">The rack's state.</param>
    public double SuppliedShare(int index, ReadOnlySpan<double> state) => tiers[index].Media.Supply(state[layout.Media(index)]);

    /// <summary>Adds how fast the water moves.</summary>
    public void Rates(ReadOnlySpan<double> state, Span<double> rates)
    {
        var reservoirDepth = ReservoirDepthM(state[layout.Reservoir]);
        for (var index = 0; index < tiers.Length; index++)
        {
            DepthsM[index] = tiers[index].DepthM(state[RackLayout.Tray(index)]);
            Flows.Drain[index] = tiers[index].Drain(
                DepthsM[index], inputs.WeepBlocked[index], inputs.StandpipeOpenShare[index]);
        }

        Supply(state, reservoirDepth);
        stack.Share(Flows.Drain, inputs.StackOpenShare);
        var waterShare = LeavesReservoir ? intake.WaterShare(reservoirDepth) : 1;
        Flows.Hose = 0;
        for (var index = 0; index < tiers.Length; index++)
        {
            var given = network.FlowM3PerS[index] * waterShare;
            var lost = inputs.PumpTurns ? Math.Max(0, given) * inputs.HoseLossShare : 0;
            Flows.Hose += lost;
            Flows.In[index] = given - lost;
            Tray(index, state, rates);
        }

        rates[layout.Spilled] += Flows.Hose;
        rates[layout.Pumped] += Flows.Hose;
        rates[layout.Evaporated] += EvaporationM3PerS;
        rates[layout.Reservoir] -= EvaporationM3PerS + Flows.Hose;
    }

    /// <summary>Fills the pipes as the pump starts, and lets them empty as it stops: into the reservoir, or out of a loose hose.</summary>
    public void Prime(Span<double> state)
    {
        if (inputs is { PumpTurns: false, HoseLossShare: > 0 })
        {
            state[layout.Spilled] += state[layout.Pipes];
            state[layout.SpilledSalts] += state[layout.PipeSalts];
            state[layout.Pipes] = 0;
            state[layout.PipeSalts] = 0;
            return;
        }

        var wanted = inputs.PumpTurns || rack.Supply.HasCheckValve ? pipesM3 : 0;
        var moved = Math.Min(wanted - state[layout.Pipes], Math.Max(0, state[layout.Reservoir]));
        MoveFromReservoir(state, moved, layout.Pipes, layout.PipeSalts);
    }

    /// <summary>Puts right what a step cannot leave: less than no water in a tray, more in the reservoir than it holds.</summary>
    /// <returns>Whether anything was put right.</returns>
    public bool Settle(Span<double> state)
    {
        var changed = false;
        for (var index = 0; index < tiers.Length; index++)
        {
            // A step may end a few millilitres below empty; the reservoir lends them, as far as it has any.
            var lent = Math.Min(-state[RackLayout.Tray(index)], state[layout.Reservoir]);
            if (lent > 0)
            {
                MoveFromReservoir(state, lent, RackLayout.Tray(index), layout.TraySalts(index));
                changed = true;
            }
        }

        var over = state[layout.Reservoir] - rack.Reservoir.CapacityL / Litres.PerM3;
        if (over > 0)
        {
            MoveFromReservoir(state, over, layout.Spilled, layout.SpilledSalts);
            changed = true;
        }

        return changed;
    }

    // A volume below 0 comes back. The oxygen in the reservoir stays as dense as it was.
    private void MoveFromReservoir(Span<double> state, double volume, int water, int salts)
    {
        var there = state[layout.Reservoir];
        var moved = volume * (volume > 0 ? Salts.GPerM3(state[layout.Salts], there) : Salts.GPerM3(state[salts], state[water]));
        state[layout.Oxygen] *= there > 0 ? 1 - volume / there : 1;
        state[layout.Salts] -= moved;
        state[salts] += moved;
        state[layout.Reservoir] -= volume;
        state[water] += volume;
    }

    // A reservoir that stands higher than a tray empties into it through a pump at rest, too.
    private bool LeavesReservoir
    {
        get
        {
            var sum = 0.0;
            foreach (var flow in network.FlowM3PerS)
            {
                sum += flow;
            }

            return inputs.PumpTurns || sum > 0;
        }
    }

    // Sets the flow of every branch.
    private void Supply(ReadOnlySpan<double> state, double reservoirDepth)
    {
        var canRunBack = false;
        for (var index = 0; index < tiers.Length; index++)
        {
            network.Ends[index] = tiers[index].EndAt(DepthsM[index], inputs.ValveOpen[index]);
            canRunBack |= network.Ends[index] is { Open: true, BackShare: > 0 };
        }

        if (!inputs.PumpTurns && !canRunBack)
        {
            network.Rest();
            return;
        }

        var lift = inputs.PumpTurns
            ? PumpLift.Running(pumpCurve, inputs.PumpSpeed, rack.Supply.HasCheckValve)
            : PumpLift.Stopped(stillPassage, rack.Supply.HasCheckValve);
        var surfaceM = rack.Reservoir.FloorHeightMm / 1000 + reservoirDepth;
        network.Solve(lift, surfaceM, inputs.ScreenLossK, Viscosity(state[layout.WaterC]));
    }

    private double Viscosity(double celsius)
    {
        if (!(Math.Abs(celsius - viscosityAtC) < SameViscosityWithinK))
        {
            viscosityAtC = celsius;
            viscosity = Physics.KinematicViscosity(celsius);
        }

        return viscosity;
    }

    private void Tray(int index, ReadOnlySpan<double> state, Span<double> rates)
    {
        var tier = tiers[index];
        var held = state[layout.Media(index)];
        var inflow = Flows.In[index];
        var drain = Flows.Drain[index];
        var spill = Flows.Spill[index] = tier.Spill(DepthsM[index], inputs.LeakM3PerS[index]);
        var uptake = Flows.Uptake[index] = tier.Media.Uptake(held, DepthsM[index]);
        var drawn = Flows.Drawn[index] = ThirstM3PerS[index] * tier.Media.Supply(held);
        rates[RackLayout.Tray(index)] += inflow - drain - spill - uptake - TrayEvaporationM3PerS[index];
        rates[layout.Media(index)] += uptake - drawn;
        rates[layout.Reservoir] += drain - inflow;
        rates[layout.Spilled] += spill;
        rates[layout.Evaporated] += TrayEvaporationM3PerS[index];
        rates[layout.Transpired] += drawn;
        rates[layout.Pumped] += inflow;
    }
}
