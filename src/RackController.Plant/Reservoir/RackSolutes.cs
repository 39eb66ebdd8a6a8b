using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// What is dissolved in the water of one rack: salts, which go where the water goes so that their sum stays what it was, and the
/// oxygen of the reservoir. The oxygen of trays and media is not followed: roots use it, and the fall back renews it.
/// </summary>
internal sealed class RackSolutes
{
    // Water on the bottom of an emptied tank: a concentration never divides by nothing.
    private const double SmallestM3 = 1e-5;

    // A pump that slurps what falls back to it draws from a tenth of a litre that mixes with it, not from a film.
    private const double MixedM3 = 1e-4;

    private readonly Rack rack;
    private readonly RackLayout layout;
    private readonly RackInputs inputs;
    private readonly double pressureKPa;
    private readonly OxygenLimits limits;
    private readonly double insertTraysPerM3;
    private readonly double topUpGPerM3;

    public RackSolutes(Rack rack, RackLayout layout, RackInputs inputs, PlantStart start)
    {
        this.rack = rack;
        this.layout = layout;
        this.inputs = inputs;
        pressureKPa = Atmosphere.PressureKPa(start.AltitudeM);
        limits = new OxygenLimits(pressureKPa);
        insertTraysPerM3 = rack.Tiers.Sum(tier => tier.Tray.Contents.InsertTrays) / (rack.Reservoir.NormalVolumeL / Litres.PerM3);
        topUpGPerM3 = Salts.GPerM3At(start.TopUpMsPerCm);
    }

    /// <summary>Salts brought with water from outside less salts taken away with it, g.</summary>
    public double BroughtSaltsG { get; private set; }

    /// <summary>Puts in what is there at the start, once the water is: one solution everywhere, saturated with air.</summary>
    public void Fill(Span<double> state, PlantStart start)
    {
        var gPerM3 = Salts.GPerM3At(start.ConductivityMsPerCm);
        state[layout.Salts] = gPerM3 * state[layout.Reservoir];
        state[layout.PipeSalts] = gPerM3 * state[layout.Pipes];
        state[layout.Oxygen] = SaturatedGPerM3(state) * state[layout.Reservoir];
        for (var index = 0; index < layout.Tiers; index++)
        {
            state[layout.MediaSalts(index)] = gPerM3 * state[layout.Media(index)];
        }
    }

    /// <summary>Oxygen in a volume of water, g/m3, which is mg/L.</summary>
    /// <param name="oxygenG">Oxygen, g.</param>
    /// <param name="volumeM3">Water, m3.</param>
    public static double OxygenGPerM3(double oxygenG, double volumeM3) => oxygenG / Math.Max(volumeM3, SmallestM3);

    /// <summary>Electrical conductivity of a volume of water, mS/cm at 25 degrees Celsius.</summary>
    /// <param name="saltsG">Salts in it, g.</param>
    /// <param name="volumeM3">Water, m3.</param>
    public static double ConductivityMsPerCm(double saltsG, double volumeM3) => Salts.MsPerCm(Salts.GPerM3(saltsG, volumeM3));

    /// <summary>Oxygen that the reservoir would hold if it were saturated, g/m3.</summary>
    public double SaturatedGPerM3(ReadOnlySpan<double> state) => DissolvedOxygen.SaturationMgPerL(
        state[layout.WaterC], Salts.SalinityGPerKg(Salts.GPerM3(state[layout.Salts], state[layout.Reservoir])), pressureKPa);

    /// <summary>Lets water come into the reservoir, top-up water that is saturated, or leave it with what is in it; the water itself
    /// has yet to move.</summary>
    /// <param name="state">The rack's state.</param>
    /// <param name="volumeM3">Negative leaves.</param>
    public void Bring(Span<double> state, double volumeM3)
    {
        var there = state[layout.Reservoir];
        var comes = volumeM3 > 0;
        var salts = volumeM3 * (comes ? topUpGPerM3 : Salts.GPerM3(state[layout.Salts], there));
        BroughtSaltsG += salts;
        state[layout.Salts] += salts;
        state[layout.Oxygen] += volumeM3 * (comes ? SaturatedGPerM3(state) : OxygenGPerM3(state[layout.Oxygen], there));
    }

    /// <summary>Adds how fast salts and oxygen move, once it is known how the water does.</summary>
    public void Rates(ReadOnlySpan<double> state, Span<double> rates, RackWater water)
    {
        var volume = Math.Max(0, state[layout.Reservoir]);
        var drawnFromM3 = Math.Max(volume, MixedM3);
        var reservoirGPerM3 = Salts.GPerM3(state[layout.Salts], drawnFromM3);
        var pumped = water.Flows.Hose;
        var returned = 0.0;
        for (var index = 0; index < layout.Tiers; index++)
        {
            MoveSalts(index, state, rates, water, reservoirGPerM3);
            pumped += Math.Max(0, water.Flows.In[index]);
            returned += water.Flows.Drain[index] + Math.Max(0, -water.Flows.In[index]);
        }

        rates[layout.SpilledSalts] += water.Flows.Hose * reservoirGPerM3;
        rates[layout.Salts] -= water.Flows.Hose * reservoirGPerM3;
        limits.Take(state[layout.WaterC], Salts.SalinityGPerKg(reservoirGPerM3));
        var area = rack.Reservoir.AreaM2;
        var oxygen = OxygenGPerM3(state[layout.Oxygen], volume);
        var transfer = limits.TransferGrowth * Aeration.TransferAt20PerS(inputs.AeratorW, area, volume / area);
        var uptake = limits.UptakeGrowth * Aeration.UptakeAt20GPerM3S(insertTraysPerM3, oxygen);
        rates[layout.Oxygen] += volume * (transfer * (limits.SaturatedGPerM3 - oxygen) - uptake)
            + returned * Aeration.ReturnedShare * limits.SaturatedGPerM3 - pumped * OxygenGPerM3(state[layout.Oxygen], drawnFromM3);
    }

    private void MoveSalts(int index, ReadOnlySpan<double> state, Span<double> rates, RackWater water, double reservoirGPerM3)
    {
        var flows = water.Flows;
        var held = state[layout.Media(index)];
        var tray = Salts.GPerM3(state[layout.TraySalts(index)], state[RackLayout.Tray(index)]);
        var media = Salts.GPerM3(state[layout.MediaSalts(index)], held);
        var lifted = flows.In[index] * (flows.In[index] > 0 ? reservoirGPerM3 : tray);
        var drained = flows.Drain[index] * tray;
        var spilled = flows.Spill[index] * tray;
        var covered = MediaStore.CoveredShare(water.DepthsM[index]);
        var intoMedia = flows.Uptake[index] * tray - Salts.MixedOutGPerS(held, media, tray, covered);
        var taken = Salts.TakenUpGPerS(flows.Drawn[index], media);
        rates[layout.TraySalts(index)] += lifted - drained - spilled - intoMedia;
        rates[layout.MediaSalts(index)] += intoMedia - taken;
        rates[layout.Salts] += drained - lifted;
        rates[layout.SpilledSalts] += spilled;
        rates[layout.CropSalts] += taken;
    }
}
