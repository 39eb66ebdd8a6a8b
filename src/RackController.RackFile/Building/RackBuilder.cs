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
    public static Rack Build(RackPart part, RackId id, Ledger ledger)
    {
        var pumpLoad = ledger.Add(part.Pump!.Load, id, part);
        var aerator = part.Aerator is { } written ? ledger.Add(Named(written.Load, "aerator"), id, part) : (LoadId?)null;
        var fans = part.Fans
            .Select((fan, index) => ledger.Add(Named(fan.Load, part.Fans.Length == 1 ? "fan" : $"fan {index + 1}"), id, part))
            .ToImmutableArray();
        var shape = RackShape.Of(part);
        var rack = new Rack
        {
            Id = id,
            Name = part.Name!,
            Reservoir = part.Reservoir!.Tank,
            Pump = new Pump(pumpLoad, part.Pump.Curve),
            Supply = shape.Supply,
            Drain = new DrainStack(part.Drain!.BoreMm, part.Drain.CapacityLpm ?? RackGeometry.DrainStackCapacityLpm(part.Drain.BoreMm)),
            Tiers = [.. part.Tiers.Select((tier, index) => Tier(tier, index, shape, load => ledger.Add(load, id, part)))],
            Schedule = new RackSchedule { Lights = [], Floods = ScheduleBuilder.Floods(null, []), Runs = [] },
            Limits = part.Limits!.Limits,
        };
        AddSensors(part, rack, ledger);
        return rack with { Schedule = Schedule(part, rack, aerator, fans, ledger) };
    }

    private static Tier Tier(TierPart part, int index, RackShape shape, Func<LoadPart, LoadId> add)
    {
        var number = index + 1;
        return new Tier
        {
            Number = number,
            TrayFloorHeightMm = shape.TrayHeightsMm[index],
            Tray = shape.Trays[index],
            Branch = shape.Branches[index],
            Light = part.Light is { } light ? add(OfTier(light.Load, number, "light")) : null,
            Valve = part.Valve is { } valve ? add(OfTier(valve, number, "valve")) : null,
            PpfdUmolPerM2S = part.Light?.PpfdUmolPerM2S ?? 0,
            InUse = part.InUse,
        };
    }

    private static RackSchedule Schedule(
        RackPart part, Rack rack, LoadId? aerator, ImmutableArray<LoadId> fans, Ledger ledger)
    {
        var runs = fans.Select((fan, index) => ScheduleBuilder.Run(fan, part.Fans[index].Run, rack.Id, ledger.Sensors));
        return new RackSchedule
        {
            Lights = ScheduleBuilder.Lights(part),
            Floods = ScheduleBuilder.Floods(part.Schedule!.Floods, rack.Tiers),
            Runs = aerator is { } id ? [ScheduleBuilder.Run(id, part.Aerator!.Run, rack.Id, ledger.Sensors), .. runs] : [.. runs],
            LightStagger = part.Schedule.Lights?.Stagger ?? NodaTime.Duration.Zero,
        };
    }

    private static void AddSensors(RackPart part, Rack rack, Ledger ledger)
    {
        foreach (var sensor in part.Sensors.Sensors)
        {
            ledger.Add(sensor, rack.Name, PlausibleRange.AtRack(sensor.Kind, rack, null), rack.Id);
        }

        foreach (var (tier, index) in part.Tiers.Select((tier, index) => (tier, index)))
        {
            foreach (var sensor in tier.Sensors.Sensors)
            {
                var range = PlausibleRange.AtRack(sensor.Kind, rack, rack.Tiers[index].Tray);
                ledger.Add(sensor with { TierNumber = index + 1 }, rack.Name, range, rack.Id);
            }
        }
    }

    private static LoadPart Named(LoadPart load, string name) =>
        load.ShortName.Length > 0 ? load : load with { ShortName = name };

    private static LoadPart OfTier(LoadPart load, int number, string name) =>
        load with { TierNumber = number, ShortName = $"tier {number} {name}" };
}
