using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// All the water of one rack: where it is, and how fast it moves. Every rate that takes water from one store gives it to
/// another, so the stores' sum stays what it was. What fills the pipes is not counted: it is back in the reservoir at once, as is
/// what drains.
/// </summary>
internal sealed class RackWater : IRates
{
    private const double DepthToleranceM = 1e-5;
    private const double CoveredOverM = 0.001;

    // A leak or evaporation fades with the last millimetre instead of ending at once.
    private const double FadesBelowM = 0.001;
    private const double StillPassageLengthM = 0.05;
    private const double StillPassageLossK = 12;

    private readonly Rack rack;
    private readonly TrayBasin[] basins;
    private readonly Weep[] weeps;
    private readonly Standpipe[] standpipes;
    private readonly MediaStore[] media;
    private readonly double[] floorM;
    private readonly double[] outletM;
    private readonly double[] drains;
    private readonly ReturnStack stack;
    private readonly PumpIntake intake;
    private readonly Pipe stillPassage;
    private readonly double[] state;

    public RackWater(Rack rack, double reservoirM3)
    {
        this.rack = rack;
        Layout = new WaterLayout(rack.Tiers.Length);
        Inputs = new WaterInputs(rack.Tiers.Length);
        basins = [.. rack.Tiers.Select(tier => new TrayBasin(tier.Tray))];
        weeps = [.. rack.Tiers.Select(tier => new Weep(tier.Tray.WeepBoreMm / 1000))];
        standpipes = [.. rack.Tiers.Select(tier =>
            new Standpipe(tier.Tray.StandpipeHeightMm / 1000, tier.Tray.StandpipeBoreMm / 1000))];
        media = [.. rack.Tiers.Select(tier => new MediaStore(tier.Tray.Contents.InsertTrays))];
        floorM = [.. rack.Tiers.Select(tier => tier.TrayFloorHeightMm / 1000)];
        outletM = [.. rack.Tiers.Select(tier => (tier.TrayFloorHeightMm + tier.Branch.OutletAboveTrayFloorMm) / 1000)];
        drains = new double[rack.Tiers.Length];
        stack = new ReturnStack(rack);
        intake = new PumpIntake(rack.Reservoir.PumpIntakeMm / 1000);
        stillPassage = new Pipe(
            StillPassageLengthM, rack.Supply.BoreMm / 1000, StillPassageLossK, Pipe.DrawnTubingRoughnessM);
        Network = RackPipes.NetworkOf(rack);
        state = new double[Layout.Length];
        state[Layout.Reservoir] = reservoirM3;
        for (var index = 0; index < media.Length; index++)
        {
            state[Layout.Media(index)] = media[index].CapacityM3;
        }

        Integrator = new BogackiShampine(this, state);
    }

    public WaterLayout Layout { get; }

    public WaterInputs Inputs { get; }

    public SupplyNetwork Network { get; }

    public BogackiShampine Integrator { get; }

    /// <summary>The state, laid out by <see cref="Layout"/>.</summary>
    public Span<double> State => state;

    /// <summary>Depth of water in the reservoir, m.</summary>
    public double ReservoirDepthM => ReservoirDepth(state[Layout.Reservoir]);

    /// <summary>Whether the pump turns and draws air.</summary>
    public bool PumpRunsDry => Inputs.PumpTurns && intake.DrawsAir(ReservoirDepthM);

    /// <summary>Depth of water in a tray, m.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double TrayDepthM(int index) => basins[index].DepthM(state[WaterLayout.Tray(index)]);

    /// <summary>How fast a tray's water rises now, m/s.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double TrayRiseMPerS(int index) =>
        Integrator.CurrentRates[WaterLayout.Tray(index)] / basins[index].AreaAtM2(TrayDepthM(index));

    /// <summary>How fast the reservoir's water rises now, m/s.</summary>
    public double ReservoirRiseMPerS => Integrator.CurrentRates[Layout.Reservoir] / rack.Reservoir.AreaM2;

    /// <summary>Flow through the pump now, m3/s, less what runs back.</summary>
    public double PumpFlowM3PerS => Integrator.CurrentRates[Layout.Pumped];

    /// <summary>Moves water between stores from outside, such as a hose.</summary>
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
        var waterShare = Inputs.PumpTurns ? intake.WaterShare(reservoirDepth) : 1;
        for (var index = 0; index < basins.Length; index++)
        {
            var depth = basins[index].DepthM(water[WaterLayout.Tray(index)]);
            drains[index] = standpipes[index].Flow(depth) + (Inputs.WeepBlocked[index] ? 0 : weeps[index].Flow(depth));
        }

        stack.Share(drains);
        for (var index = 0; index < basins.Length; index++)
        {
            Tray(index, water, waterShare, rates);
        }

        var evaporation = Inputs.EvaporationM3PerS * Math.Min(1, reservoirDepth / FadesBelowM);
        rates[Layout.Evaporated] = evaporation;
        rates[Layout.Reservoir] -= evaporation;
    }

    /// <inheritdoc/>
    public double Error(ReadOnlySpan<double> error)
    {
        var worst = Math.Abs(error[Layout.Reservoir]) / rack.Reservoir.AreaM2;
        for (var index = 0; index < basins.Length; index++)
        {
            worst = Math.Max(worst, Math.Abs(error[WaterLayout.Tray(index)]) / basins[index].AreaAtM2(0));
        }

        Invariant.Holds(double.IsFinite(worst), "the water of a rack stays finite");
        return worst / DepthToleranceM;
    }

    /// <inheritdoc/>
    public bool Settle(Span<double> water)
    {
        var changed = false;
        for (var index = 0; index < basins.Length; index++)
        {
            ref var tray = ref water[WaterLayout.Tray(index)];
            if (tray < 0)
            {
                water[Layout.Reservoir] += tray;
                tray = 0;
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
        for (var index = 0; index < basins.Length; index++)
        {
            var surface = floorM[index] + basins[index].DepthM(water[WaterLayout.Tray(index)]);
            var covered = Math.Clamp((surface - outletM[index]) / CoveredOverM, 0, 1);
            Network.Ends[index] = new BranchEnd(
                Inputs.ValveOpen[index], Math.Max(surface, outletM[index]), covered);
            canRunBack |= covered > 0 && Inputs.ValveOpen[index];
        }

        if (!Inputs.PumpTurns && !canRunBack)
        {
            Network.Rest();
            return;
        }

        var lift = Inputs.PumpTurns
            ? PumpLift.Running(rack.Pump.Curve, Inputs.PumpSpeed, rack.Supply.HasCheckValve)
            : PumpLift.Stopped(stillPassage, rack.Supply.HasCheckValve);
        var surfaceM = rack.Reservoir.FloorHeightMm / 1000 + reservoirDepth;
        Network.Solve(lift, surfaceM, Inputs.ScreenLossK, Inputs.Viscosity);
    }

    private void Tray(int index, ReadOnlySpan<double> water, double waterShare, Span<double> rates)
    {
        var depth = basins[index].DepthM(water[WaterLayout.Tray(index)]);
        var held = water[Layout.Media(index)];
        var inflow = Network.FlowM3PerS[index] * waterShare;
        var spill = basins[index].OverEdge(depth) + Inputs.LeakM3PerS[index] * Math.Min(1, depth / FadesBelowM);
        var uptake = media[index].Uptake(held, depth);
        var drawn = Inputs.ThirstM3PerS[index] * media[index].Supply(held);
        rates[WaterLayout.Tray(index)] = inflow - drains[index] - spill - uptake;
        rates[Layout.Media(index)] = uptake - drawn;
        rates[Layout.Reservoir] += drains[index] - inflow;
        rates[Layout.Spilled] += spill;
        rates[Layout.Transpired] += drawn;
        rates[Layout.Pumped] += inflow;
    }
}
