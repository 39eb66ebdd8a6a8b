using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Building;

/// <summary>Makes a rack, with its loads and sensors, of what was written and found sound.</summary>
internal static class RackBuilder
{
    /// <summary>Makes a rack.</summary>
    /// <param name="part">As written, without any error.</param>
    /// <param name="id">Its number.</param>
    /// <param name="ledger">Where its loads and sensors go.</param>
    /// <param name="upkeepOfAll">What the site says of the upkeep of every rack; null where it says nothing.</param>
    public static Rack Build(RackPart part, RackId id, Ledger ledger, UpkeepPart? upkeepOfAll)
    {
        var loads = part.Loads.ToDictionary(load => load.ShortName, load => ledger.Add(load, id, part));
        var shape = RackShape.Of(part);
        var rack = new Rack
        {
            Id = id,
            Name = part.Name!,
            Reservoir = part.Reservoir!.Tank,
            Pump = new Pump(loads[part.Pump!.Load.ShortName], part.Pump.Curve),
            Supply = shape.Supply,
            Drain = new DrainStack(
                part.Drain!.BoreMm, part.Drain.CapacityLpm ?? RackGeometry.DrainStackCapacityLpm(part.Drain.BoreMm)),
            Tiers = [.. part.Tiers.Select(tier => Lit(Tier(tier, shape, loads), tier.Light))],
            Schedule = new RackSchedule { Lights = [], Floods = ScheduleBuilder.Floods(null, []), Runs = [] },
            DripTray = part.DripTray?.Tray,
            Stand = part.Stand,
            TimeCutout = part.Wired?.TimeCutout?.Cutout,
            FloatCutout = part.Wired?.FloatCutout?.Cutout,
            Limits = part.Limits!.Limits,
            Measured = part.Measured?.Measured,
            ForBatches = part.ForBatches?.Asked ?? BatchSchedule.None,
            Upkeep = UpkeepPart.Over(part.Upkeep, upkeepOfAll),
        };
        AddSensors(part, rack, ledger);
        var asWritten = Schedule(part.ScheduleAsWritten!, part, rack, loads, ledger.Sensors);
        return rack with
        {
            Schedule = rack.ForBatches.IsNone ? asWritten : Schedule(part.Schedule!, part, rack, loads, ledger.Sensors),
            ScheduleAsWritten = rack.ForBatches.IsNone ? null : asWritten,
        };
    }

    private static Tier Tier(TierPart part, RackShape shape, Dictionary<string, LoadId> loads) => new()
    {
        Number = part.Number,
        TrayFloorHeightMm = shape.TrayHeightsMm[part.Number - 1],
        Tray = shape.Trays[part.Number - 1],
        Branch = shape.Branches[part.Number - 1],
        Light = part.Light is { } light ? loads[light.Load.ShortName] : null,
        Valve = part.Valve is { } valve ? loads[valve.ShortName] : null,
        InUse = part.InUse,
    };

    private static Tier Lit(Tier dark, LightPart? light) =>
        light is null ? dark : dark with { PpfdUmolPerM2S = light.PpfdUmolPerM2S, PpfdPerLux = light.PpfdPerLux };

    private static RackSchedule Schedule(
        SchedulePart schedule, RackPart part, Rack rack, Dictionary<string, LoadId> loads, ImmutableArray<Sensor> sensors)
    {
        var runners = part.Aerator is null ? part.Fans : [part.Aerator, .. part.Fans];
        return new RackSchedule
        {
            Lights = ScheduleBuilder.Lights(schedule, part.Tiers),
            Floods = ScheduleBuilder.Floods(schedule.Floods, rack.Tiers),
            Runs = [.. runners.Select(one => ScheduleBuilder.Run(loads[one.Load.ShortName], one.Run, rack.Id, sensors))],
            LightStagger = schedule.Lights?.Stagger ?? NodaTime.Duration.Zero,
        };
    }

    private static void AddSensors(RackPart part, Rack rack, Ledger ledger)
    {
        var pump = part.Pump!.Load;
        var pumpStartA = pump.InrushMultiple * pump.CurrentOn(ledger.VoltageV(pump.Circuit ?? part.Circuit));
        foreach (var sensor in part.AllSensors)
        {
            var tier = sensor.TierNumber is { } number ? rack.Tier(number) : null;
            ledger.Add(sensor, rack.Name, PlausibleRange.AtRack(sensor.Kind, rack, tier, pumpStartA), rack.Id);
        }
    }
}
