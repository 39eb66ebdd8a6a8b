namespace RackController.Plant;

/// <summary>How each quantity of a rack runs over the step in hand, in the quantity's own unit unless a straight line of it says the
/// same: a tray's depth is watched as its volume.</summary>
internal sealed class RackCurves(RackDynamics dynamics, SpilledWater spilled)
{
    private readonly int places = dynamics.Layout.Tiers + 1;
    private readonly (long Step, Curve Curve)[] known =
        new (long, Curve)[Enum.GetValues<RackQuantity>().Length * (dynamics.Layout.Tiers + 1)];

    /// <summary>The curve of a quantity; worked out once for each step, however often it is asked for.</summary>
    /// <param name="quantity">Which.</param>
    /// <param name="tier">Tier, from 0; null for the whole rack.</param>
    public Curve Of(RackQuantity quantity, int? tier)
    {
        _ = dynamics.KnownUntil;
        ref var curve = ref known[(int)quantity * places + (tier + 1 ?? 0)];
        if (curve.Step != dynamics.Steps)
        {
            curve = (dynamics.Steps, WorkOut(quantity, tier));
        }

        return curve.Curve;
    }

    private Curve WorkOut(RackQuantity quantity, int? tier) => quantity switch
    {
        RackQuantity.TrayDepth => dynamics.Curve(RackLayout.Tray(tier!.Value)),
        RackQuantity.ReservoirDepth => dynamics.Curve(dynamics.Layout.Reservoir),
        RackQuantity.Spilled => Spilled(0),
        RackQuantity.Lying or RackQuantity.DripTrayDepth => Spilled(spilled.MoppedM3),
        RackQuantity.OntoFloor => Spilled(spilled.KeptFromFloorM3),
        RackQuantity.PumpFlow => dynamics.Curve(dynamics.Layout.Pumped).Rate(dynamics.StepS),
        RackQuantity.WaterTemperature => dynamics.Curve(dynamics.Layout.WaterC),
        RackQuantity.DissolvedOxygen => OfReservoir(dynamics.Layout.Oxygen, RackSolutes.OxygenGPerM3),
        RackQuantity.Conductivity => OfReservoir(dynamics.Layout.Salts, RackSolutes.ConductivityMsPerCm),
        RackQuantity.AirTemperature => Mean(dynamics.Layout.AirC(0), tier),
        RackQuantity.AirHumidity => OfAir(tier, HumidAir.RelativePercent),
        _ => OfAir(tier, HumidAir.DeficitKPa),
    };

    /// <summary>What the curve of a quantity reads where the quantity stands at a level.</summary>
    /// <param name="quantity">Which.</param>
    /// <param name="tier">Tier, from 0; null for the whole rack.</param>
    /// <param name="level">The level, in the unit of the quantity.</param>
    public double Reading(RackQuantity quantity, int? tier, double level) => quantity switch
    {
        RackQuantity.TrayDepth => dynamics.Water.TrayVolumeM3(tier!.Value, level / 1000),
        RackQuantity.ReservoirDepth => dynamics.Water.ReservoirVolumeM3(level / 1000),
        RackQuantity.Spilled or RackQuantity.Lying or RackQuantity.OntoFloor => level / Litres.PerM3,
        RackQuantity.DripTrayDepth => spilled.TrayVolumeM3(level / 1000),
        RackQuantity.PumpFlow => level / Litres.PerMinutePerM3PerS,
        _ => level,
    };

    // All that was spilled but for a part that stays what it is until somebody mops up.
    private Curve Spilled(double lessM3)
    {
        var all = dynamics.Curve(dynamics.Layout.Spilled);
        return new Curve(all.First - lessM3, all.Second - lessM3, all.Third - lessM3, all.Last - lessM3);
    }

    // Of one tier, or of all on average; the parts of the tiers stand in a row.
    private Curve Mean(int first, int? tier)
    {
        if (tier is { } index)
        {
            return dynamics.Curve(first + index);
        }

        var sum = default(Curve);
        for (var i = 0; i < dynamics.Layout.Tiers; i++)
        {
            var one = dynamics.Curve(first + i);
            sum = new Curve(sum.First + one.First, sum.Second + one.Second, sum.Third + one.Third, sum.Last + one.Last);
        }

        var count = dynamics.Layout.Tiers;
        return new Curve(sum.First / count, sum.Second / count, sum.Third / count, sum.Last / count);
    }

    private Curve OfReservoir(int dissolved, Func<double, double, double> of) =>
        Of(dynamics.Curve(dissolved), dynamics.Curve(dynamics.Layout.Reservoir), of);

    private Curve OfAir(int? tier, Func<double, double, double> of) =>
        Of(Mean(dynamics.Layout.AirC(0), tier), Mean(dynamics.Layout.VapourKPa(0), tier), of);

    // What follows from two parts of the state follows them closely, since neither changes by much within a step.
    private static Curve Of(in Curve one, in Curve other, Func<double, double, double> of) => new(
        of(one.First, other.First), of(one.Second, other.Second), of(one.Third, other.Third), of(one.Last, other.Last));
}
