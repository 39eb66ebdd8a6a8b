using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// All the water of one rack: where it is, and how fast it moves. Every rate that takes water from one store gives it to
/// another, so the stores' sum stays what it was. What fills the pipes is not counted: it is back in the reservoir at once, as is
/// what drains.
/// </summary>
internal sealed class RackWater : IRates
{
    private const double DepthToleranceM = 1e-6;

    // The way through a still impeller; an assumption of ours, common practice, no source.
    private const double StillPassageLengthM = 0.05;
    private const double StillPassageLossK = 12;

    private readonly Rack rack;
    private readonly TierWater[] tiers;
    private readonly double[] drains;
    private readonly ReturnStack stack;
    private readonly PumpIntake intake;
    private readonly SupplyNetwork network;
    private readonly Pipe stillPassage;
    private readonly double[] state;

    public RackWater(Rack rack, double reservoirM3)
    {
        this.rack = rack;
        Layout = new WaterLayout(rack.Tiers.Length);
        Inputs = new WaterInputs(rack.Tiers.Length);
        tiers = [.. rack.Tiers.Select(tier => new TierWater(tier))];
        drains = new double[tiers.Length];
        stack = new ReturnStack(rack);
        intake = new PumpIntake(rack.Reservoir.PumpIntakeMm / 1000);
        network = RackPipes.NetworkOf(rack);
        stillPassage = new Pipe(
            StillPassageLengthM, rack.Supply.BoreMm / 1000, StillPassageLossK, Pipe.DrawnTubingRoughnessM);
        state = new double[Layout.Length];
        state[Layout.Reservoir] = reservoirM3;
        for (var index = 0; index < tiers.Length; index++)
        {
            state[Layout.Media(index)] = tiers[index].Media.CapacityM3;
        }

        Integrator = new BogackiShampine(this, state);
    }

    public WaterLayout Layout { get; }

    public WaterInputs Inputs { get; }

    public BogackiShampine Integrator { get; }

    /// <summary>The state, laid out by <see cref="Layout"/>.</summary>
    public ReadOnlySpan<double> State => state;

    /// <summary>Depth of water in the reservoir, m.</summary>
    public double ReservoirDepthM => ReservoirDepth(state[Layout.Reservoir]);

    /// <summary>Whether the pump turns and draws air.</summary>
    public bool PumpRunsDry => Inputs.PumpTurns && intake.DrawsAir(ReservoirDepthM);

    /// <summary>Depth of water in a tray, m.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double TrayDepthM(int index) => tiers[index].DepthM(state[WaterLayout.Tray(index)]);

    /// <summary>How fast a tray's water rises now, m/s.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double TrayRiseMPerS(int index) =>
        Integrator.CurrentRates[WaterLayout.Tray(index)] / tiers[index].AreaAtM2(TrayDepthM(index));

    /// <summary>How fast the reservoir's water rises now, m/s.</summary>
    public double ReservoirRiseMPerS => Integrator.CurrentRates[Layout.Reservoir] / rack.Reservoir.AreaM2;

    /// <summary>How fast water comes onto the floor now, m3/s.</summary>
    public double SpillM3PerS => Integrator.CurrentRates[Layout.Spilled];

    /// <summary>Flow through the pump now, m3/s, less what runs back.</summary>
    public double PumpFlowM3PerS => Integrator.CurrentRates[Layout.Pumped];

    /// <summary>Pours water into a store from outside, such as a hose.</summary>
    /// <param name="store">Where it is in the state.</param>
    /// <param name="volume">m3; negative takes away.</param>
    public void Pour(int store, double volume)
    {
        state[store] += volume;
        Settle(state);
        Integrator.Restart();
    }

    /// <inheritdoc/>
    public void Rates(ReadOnlySpan<double> water, Span<double> rates)
    {
        rates.Clear();
        var reservoirDepth = ReservoirDepth(water[Layout.Reservoir]);
        Supply(water, reservoirDepth);
        for (var index = 0; index < tiers.Length; index++)
        {
            drains[index] = tiers[index].Drain(tiers[index].DepthM(water[WaterLayout.Tray(index)]), Inputs.WeepBlocked[index]);
        }

        stack.Share(drains);
        var waterShare = Inputs.PumpTurns ? intake.WaterShare(reservoirDepth) : 1;
        for (var index = 0; index < tiers.Length; index++)
        {
            Tray(index, water, network.FlowM3PerS[index] * waterShare, rates);
        }

        rates[Layout.Evaporated] = Inputs.EvaporationM3PerS * TierWater.FadeAt(reservoirDepth);
        rates[Layout.Reservoir] -= rates[Layout.Evaporated];
    }

    /// <inheritdoc/>
    public double Error(ReadOnlySpan<double> error)
    {
        var worst = Math.Abs(error[Layout.Reservoir]) / rack.Reservoir.AreaM2;
        for (var index = 0; index < tiers.Length; index++)
        {
            worst = Math.Max(worst, Math.Abs(error[WaterLayout.Tray(index)]) / tiers[index].AreaAtM2(0));
        }

        Invariant.Holds(double.IsFinite(worst), "the water of a rack stays finite");
        return worst / DepthToleranceM;
    }

    /// <inheritdoc/>
    public bool Settle(Span<double> water)
    {
        var changed = false;
        for (var index = 0; index < tiers.Length; index++)
        {
            // A step may end a few millilitres below empty; the reservoir lends them, as far as it has any.
            ref var tray = ref water[WaterLayout.Tray(index)];
            var lent = Math.Min(-tray, water[Layout.Reservoir]);
            if (lent > 0)
            {
                water[Layout.Reservoir] -= lent;
                tray += lent;
                changed = true;
            }
        }

        var over = water[Layout.Reservoir] - rack.Reservoir.CapacityL / Litres.PerM3;
        if (over > 0)
        {
            water[Layout.Reservoir] -= over;
            water[Layout.Spilled] += over;
            changed = true;
        }

        return changed;
    }

    private double ReservoirDepth(double volume) => Math.Max(0, volume) / rack.Reservoir.AreaM2;

    // Sets the flow of every branch.
    private void Supply(ReadOnlySpan<double> water, double reservoirDepth)
    {
        var canRunBack = false;
        for (var index = 0; index < tiers.Length; index++)
        {
            var depth = tiers[index].DepthM(water[WaterLayout.Tray(index)]);
            network.Ends[index] = tiers[index].EndAt(depth, Inputs.ValveOpen[index]);
            canRunBack |= network.Ends[index] is { Open: true, BackShare: > 0 };
        }

        if (!Inputs.PumpTurns && !canRunBack)
        {
            network.Rest();
            return;
        }

        var lift = Inputs.PumpTurns
            ? PumpLift.Running(rack.Pump.Curve, Inputs.PumpSpeed, rack.Supply.HasCheckValve)
            : PumpLift.Stopped(stillPassage, rack.Supply.HasCheckValve);
        var surfaceM = rack.Reservoir.FloorHeightMm / 1000 + reservoirDepth;
        network.Solve(lift, surfaceM, Inputs.ScreenLossK, Inputs.Viscosity);
    }

    private void Tray(int index, ReadOnlySpan<double> water, double inflow, Span<double> rates)
    {
        var tier = tiers[index];
        var depth = tier.DepthM(water[WaterLayout.Tray(index)]);
        var held = water[Layout.Media(index)];
        var spill = tier.Spill(depth, Inputs.LeakM3PerS[index]);
        var uptake = tier.Media.Uptake(held, depth);
        var drawn = Inputs.ThirstM3PerS[index] * tier.Media.Supply(held);
        rates[WaterLayout.Tray(index)] = inflow - drains[index] - spill - uptake;
        rates[Layout.Media(index)] = uptake - drawn;
        rates[Layout.Reservoir] += drains[index] - inflow;
        rates[Layout.Spilled] += spill;
        rates[Layout.Transpired] += drawn;
        rates[Layout.Pumped] += inflow;
    }
}
