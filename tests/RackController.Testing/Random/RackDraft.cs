using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Testing;

/// <summary>A tier before its loads and sensors have their numbers.</summary>
/// <param name="HeightMm">Height of its tray's floor, mm.</param>
/// <param name="Tray">Its tray.</param>
/// <param name="Branch">Its branch.</param>
/// <param name="LightW">Power of its light, W; null for none.</param>
/// <param name="HasValve">Whether it has a valve.</param>
/// <param name="InUse">Whether it takes part at the start.</param>
/// <param name="Light">When it is lit.</param>
/// <param name="Sensors">What is measured at it.</param>
public sealed record TierDraft(
    double HeightMm, FloodTray Tray, SupplyBranch Branch, double? LightW, bool HasValve, bool InUse, Photoperiod? Light,
    ImmutableArray<SensorKind> Sensors)
{
    private static readonly SensorKind[] kinds =
    [
        SensorKind.TrayFullFloat, SensorKind.TrayHighFloat, SensorKind.TrayLevel, SensorKind.AirTemperature,
        SensorKind.AirHumidity, SensorKind.LightLevel,
    ];

    /// <summary>Any tier.</summary>
    public static Gen<TierDraft> Any { get; } =
        from heightMm in RandomParts.Fine(100, 2400)
        from tray in RandomParts.Tray
        from branch in RandomParts.Branch
        from lightW in RandomParts.Fine(10, 300).Nullable(0.3)
        from hasValve in Gen.Bool
        from inUse in Gen.Frequency((9, Gen.Const(true)), (1, Gen.Const(false)))
        from light in RandomSchedules.Light
        from sensors in RackDraft.Some(kinds)
        select new TierDraft(heightMm, tray, branch, lightW, hasValve, inUse, light, sensors);
}

/// <summary>A rack before its loads and sensors have their numbers.</summary>
/// <param name="Reservoir">Its tank.</param>
/// <param name="Pump">What its pump lifts.</param>
/// <param name="PumpW">What its pump draws, W.</param>
/// <param name="Supply">Its riser.</param>
/// <param name="Drain">Its drain stack.</param>
/// <param name="Tiers">Its tiers, bottom first.</param>
/// <param name="Floods">When it is flooded.</param>
/// <param name="Limits">Its limits.</param>
/// <param name="Stagger">How much later each tier's light comes on than the one below it.</param>
/// <param name="Sensors">What is measured at it as a whole.</param>
/// <param name="DripTray">The pan under it; null for none.</param>
/// <param name="Cutout">The height of the float in the pump's wire as a share of the depth that it can have; null for none.</param>
/// <param name="Fans">For each fan, a number that decides how it runs.</param>
/// <param name="Draw">A number that decides what is left.</param>
public sealed record RackDraft(
    Reservoir Reservoir, PumpCurve Pump, double PumpW, SupplyRiser Supply, DrainStack Drain, ImmutableArray<TierDraft> Tiers,
    FloodPlan Floods, InterlockLimits Limits, Duration Stagger, ImmutableArray<SensorKind> Sensors, DripTray? DripTray,
    double? Cutout, ImmutableArray<int> Fans, int Draw)
{
    private static readonly SensorKind[] kinds =
    [
        SensorKind.ReservoirLowFloat, SensorKind.ReservoirFullFloat, SensorKind.ReservoirLevel, SensorKind.LeakRope,
        SensorKind.DripTrayFloat, SensorKind.PumpFlow, SensorKind.PumpCurrent, SensorKind.WaterTemperature,
        SensorKind.AirTemperature, SensorKind.AirHumidity,
    ];

    /// <summary>Any rack of one tier to eight: mostly each above the one below, sometimes in any order.</summary>
    public static Gen<RackDraft> Any { get; } =
        from reservoir in RandomParts.Reservoir
        from pump in RandomParts.Pump
        from pumpW in RandomParts.Mostly(20, 200, 0.1, 10_000)
        from supply in RandomParts.Riser
        from drain in RandomParts.Stack
        from tiers in TierDraft.Any.Array[1, 8]
        from floods in RandomSchedules.Floods
        from limits in RandomSchedules.Limits
        from staggerS in RandomParts.Fine(0, 300)
        from sensors in Some(kinds)
        from dripTray in Gen.Frequency((1, Gen.Const((DripTray?)null)), (2, RandomParts.DripTray.Select(tray => (DripTray?)tray)))
        from cutout in RandomParts.Share.Nullable(0.4)
        from fans in Gen.Int[0, 1 << 20].Array[0, 2]
        from draw in Gen.Int[0, 1 << 20]
        select new RackDraft(
            reservoir, pump, pumpW, supply, drain, [.. tiers.OrderBy(tier => draw % 4 == 0 ? 0 : tier.HeightMm)], floods, limits,
            Duration.FromSeconds(staggerS),
            [.. sensors.Where(kind => kind != SensorKind.DripTrayFloat || dripTray is not null)], dripTray, cutout, [.. fans], draw);

    internal static Gen<ImmutableArray<SensorKind>> Some(SensorKind[] kinds) =>
        Gen.Bool.Array[kinds.Length].Select(fitted => kinds.Where((_, index) => fitted[index]).ToImmutableArray());
}
