using System.Collections.Immutable;

namespace RackController.Model;

/// <summary>
/// One wheeled frame: a pump lifts water from its reservoir up a supply riser to a flood tray on every tier, and a
/// drain stack brings it back. Heights count from the floor that the rack stands on.
/// </summary>
public sealed record Rack
{
    /// <summary>Place in <see cref="Site.Racks"/>.</summary>
    public required RackId Id { get; init; }

    /// <summary>What the grower calls it; unique on the site.</summary>
    public required string Name { get; init; }

    /// <summary>The tank.</summary>
    public required Reservoir Reservoir { get; init; }

    /// <summary>The pump and what it can do.</summary>
    public required Pump Pump { get; init; }

    /// <summary>The pipe from pump to tiers.</summary>
    public required SupplyRiser Supply { get; init; }

    /// <summary>The common return pipe.</summary>
    public required DrainStack Drain { get; init; }

    /// <summary>The pan that catches what is spilled; null where that runs onto the floor.</summary>
    public DripTray? DripTray { get; init; }

    /// <summary>What it weighs and how it stands; null where nobody said.</summary>
    public RackStand? Stand { get; init; }

    /// <summary>The float in the pump's own wire; null where none is.</summary>
    public FloatCutout? FloatCutout { get; init; }

    /// <summary>The time relay in the pump's own wire; null where none is.</summary>
    public TimeCutout? TimeCutout { get; init; }

    /// <summary>The shelves, bottom first: <c>Tiers[0]</c> is tier number 1.</summary>
    public required ImmutableArray<Tier> Tiers { get; init; }

    /// <summary>What should happen when.</summary>
    public required RackSchedule Schedule { get; init; }

    /// <summary>What the batches on it ask beside what the grower wrote; it is in <see cref="Schedule"/> already.</summary>
    public BatchSchedule ForBatches { get; init; } = BatchSchedule.None;

    /// <summary>What should happen when, as the grower wrote it; null where that is <see cref="Schedule"/>.</summary>
    public RackSchedule? ScheduleAsWritten { get; init; }

    /// <summary>What should happen when, as far as the grower wrote it.</summary>
    public RackSchedule OwnSchedule => ScheduleAsWritten ?? Schedule;

    /// <summary>How far each interlock lets things go.</summary>
    public InterlockLimits Limits { get; init; } = InterlockLimits.Default;

    /// <summary>What timed floods told of it; null where nobody timed any.</summary>
    public MeasuredRack? Measured { get; init; }

    /// <summary>What the rack file says of works of upkeep, each once; of the others its media decides. No decision of the controller
    /// depends on it.</summary>
    public ImmutableArray<UpkeepRule> Upkeep { get; init; } = [];

    /// <summary>What its pump lifts, by what was measured where it was.</summary>
    public PumpCurve PumpCurveAsMeasured => Measured is { PumpSpeed.Value: var speed } ? Pump.Curve.AtSpeed(speed) : Pump.Curve;

    /// <summary>The tier with this number.</summary>
    /// <param name="number">1 at the bottom.</param>
    public Tier Tier(int number) => Tiers[number - 1];
}

/// <summary>One shelf: its flood tray, what stands in it, and its light and valve.</summary>
public sealed record Tier
{
    /// <summary>1 at the bottom.</summary>
    public required int Number { get; init; }

    /// <summary>Height of the flood tray's inside floor above the floor of the room, mm. Default by the number of tiers: the
    /// lowest at 450, the others at most 450 apart and none above 1530.</summary>
    public required double TrayFloorHeightMm { get; init; }

    /// <summary>The watertight tray.</summary>
    public required FloodTray Tray { get; init; }

    /// <summary>The pipe from the riser to the tray.</summary>
    public required SupplyBranch Branch { get; init; }

    /// <summary>The relay of its light; null on a tier that grows in the dark.</summary>
    public LoadId? Light { get; init; }

    /// <summary>The relay of its tier valve; null where water flows whenever the pump runs.</summary>
    public LoadId? Valve { get; init; }

    /// <summary>Photosynthetic photon flux density at the canopy with the light on, umol/m2/s: 0 to 2000.</summary>
    public double PpfdUmolPerM2S { get; init; }

    /// <summary>Photon flux for each lux of the light, umol/m2/s. Default 0.015, as of white LED lamps (common practice, no source);
    /// 0.001 to 1.</summary>
    public double PpfdPerLux { get; init; } = 0.015;

    /// <summary>Illuminance at the canopy with the light on, lx; 0 where there is none.</summary>
    public double LitLux => PpfdUmolPerM2S / PpfdPerLux;

    /// <summary>Whether the tier takes part at start; the grower may change it while running. A tier out of use has
    /// neither light nor water.</summary>
    public bool InUse { get; init; } = true;
}
