using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Testing;

/// <summary>Numbers the loads and sensors of a site as its racks are put together.</summary>
internal sealed class SiteParts(int circuits)
{
    public List<Load> Loads { get; } = [];

    public List<Sensor> Sensors { get; } = [];

    public Circuit Circuit((Circuit Circuit, bool HasSense, bool HasCurrent) draft, CircuitId id)
    {
        var name = $"circuit {id.Index + 1}";
        if (draft.HasCurrent)
        {
            Add(SensorKind.CircuitCurrent, $"{name}/current", 0, 10 * draft.Circuit.BreakerA, sensor => sensor with { Circuit = id });
        }

        SensorId? sense = draft.HasSense
            ? Add(SensorKind.SupplySense, $"{name}/supply sense", 0, 1, sensor => sensor with { Circuit = id })
            : null;
        return draft.Circuit with { Id = id, Name = name, SupplySense = sense };
    }

    public Rack Rack(RackDraft draft, RackId id, string name)
    {
        var pump = Add(LoadKind.Pump, $"{name}/pump", id, null, draft.PumpW, draft.Draw);
        var aerator = Add(LoadKind.Aerator, $"{name}/aerator", id, null, 5, draft.Draw + 1);
        var fans = draft.Fans.Select((draw, index) => Add(LoadKind.Fan, $"{name}/fan {index + 1}", id, null, 12, draw)).ToArray();
        foreach (var kind in draft.Sensors)
        {
            AddAtRack(kind, name, id, draft);
        }

        var tiers = draft.Tiers.Select((tier, index) => Tier(tier, id, index + 1, $"{name}/tier {index + 1}")).ToImmutableArray();
        var air = Sensors
            .Where(sensor => sensor.Rack == id && sensor.Kind is SensorKind.AirTemperature or SensorKind.AirHumidity)
            .ToImmutableArray();
        return new Rack
        {
            Id = id,
            Name = name,
            Reservoir = draft.Reservoir,
            Pump = new Pump(pump, draft.Pump),
            Supply = draft.Supply,
            Drain = draft.Drain,
            Tiers = tiers,
            DripTray = draft.DripTray,
            FloatCutout = draft.Cutout is { } share ? Cutout(draft, share) : null,
            TimeCutout = draft.Draw % 4 == 0 ? new TimeCutout(draft.Limits.PumpMaximumRun * (1.05 + draft.Draw % 7 / 10.0)) : null,
            Limits = draft.Limits,
            Schedule = new RackSchedule
            {
                Lights = [.. draft.Tiers.Select(tier => tier.LightW is null ? null : tier.Light)],
                LightStagger = draft.Stagger,
                Floods = draft.Floods,
                Runs =
                [
                    new RunAlways(aerator),
                    .. fans.Select((fan, index) => RandomSchedules.Run(fan, air, draft.Fans[index])),
                ],
            },
        };
    }

    // In the drip tray, or above the standpipe of any tier.
    private static FloatCutout Cutout(RackDraft draft, double share)
    {
        if (draft.DripTray is { } pan && draft.Draw % 3 != 0)
        {
            return new FloatCutout(null, 1 + share * (pan.DepthMm - 2));
        }

        var tier = draft.Draw % draft.Tiers.Length;
        var tray = draft.Tiers[tier].Tray;
        return new FloatCutout(1 + tier, tray.StandpipeHeightMm + share * (tray.RimDepthMm - tray.StandpipeHeightMm));
    }

    private Tier Tier(TierDraft draft, RackId rack, int number, string name)
    {
        foreach (var kind in draft.Sensors)
        {
            AddAtTier(kind, name, rack, number, draft.Tray);
        }

        return new Tier
        {
            Number = number,
            TrayFloorHeightMm = draft.HeightMm,
            Tray = draft.Tray,
            Branch = draft.Branch,
            InUse = draft.InUse,
            PpfdUmolPerM2S = draft.LightW ?? 0,
            Light = draft.LightW is { } watts ? Add(LoadKind.Light, $"{name} light", rack, number, watts, number) : null,
            Valve = draft.HasValve ? Add(LoadKind.Valve, $"{name} valve", rack, number, 6, number) : null,
        };
    }

    // Plausible ranges as a rack file's reader takes them.
    private void AddAtRack(SensorKind kind, string name, RackId rack, RackDraft draft)
    {
        var tank = draft.Reservoir;
        var filledMm = tank.NormalVolumeL / tank.AreaM2;
        var heightMm = kind switch
        {
            SensorKind.ReservoirLowFloat => tank.PumpIntakeMm + 0.3 * (filledMm - tank.PumpIntakeMm),
            SensorKind.ReservoirFullFloat => 0.97 * filledMm,
            SensorKind.DripTrayFloat => 0.2 * draft.DripTray!.DepthMm,
            _ => 0,
        };
        var most = kind switch
        {
            SensorKind.ReservoirLevel => tank.DepthMm + 30,
            SensorKind.PumpCurrent => 2 * 6 * draft.PumpW / (0.6 * 100),
            SensorKind.PumpFlow => 1.2 * draft.Pump.MaxFlowLpm,
            _ => 1,
        };
        Add(kind, $"{name}/{kind}", 0, most, sensor => sensor with { Rack = rack, HeightMm = Math.Max(0, heightMm) });
    }

    private void AddAtTier(SensorKind kind, string name, RackId rack, int number, FloodTray tray)
    {
        var heightMm = kind switch
        {
            SensorKind.TrayFullFloat => 0.9 * tray.StandpipeHeightMm,
            SensorKind.TrayHighFloat => (tray.StandpipeHeightMm + tray.RimDepthMm) / 2,
            _ => 0,
        };
        Add(kind, $"{name}/{kind}", 0, kind == SensorKind.TrayLevel ? tray.RimDepthMm + 30 : 1, sensor => sensor with
        {
            Rack = rack,
            TierNumber = number,
            HeightMm = heightMm,
        });
    }

    private SensorId Add(SensorKind kind, string name, double least, double most, Func<Sensor, Sensor> place)
    {
        var (low, high) = kind switch
        {
            SensorKind.WaterTemperature => (0, 45),
            SensorKind.AirTemperature => (-10, 60),
            SensorKind.AirHumidity => (1, 100),
            SensorKind.LightLevel => (0, 70_000),
            _ => (least, most),
        };
        Sensors.Add(place(new Sensor
        {
            Id = new SensorId(Sensors.Count),
            Name = name,
            Kind = kind,
            PlausibleMin = low,
            PlausibleMax = high,
            StaleAfter = Duration.FromSeconds(kind.IsContact() ? 2 : 30),
        }));
        return Sensors[^1].Id;
    }

    private LoadId Add(LoadKind kind, string name, RackId rack, int? tier, double watts, int draw)
    {
        var isSafeOn = kind is LoadKind.Fan or LoadKind.Aerator;
        Loads.Add(new Load
        {
            Id = new LoadId(Loads.Count),
            Name = name,
            Kind = kind,
            Rack = rack,
            TierNumber = tier,
            Circuit = new CircuitId(draw % circuits),
            PowerW = watts,
            PowerFactor = kind switch { LoadKind.Light => 0.95, LoadKind.Valve => 1, _ => 0.6 },
            InrushMultiple = kind switch { LoadKind.Light => 40, LoadKind.Valve => 1, LoadKind.Pump => 6, _ => 5 },
            Priority = kind switch { LoadKind.Aerator => 1, LoadKind.Fan => 2, LoadKind.Light => 5, _ => 3 },
            SafeState = isSafeOn ? SwitchState.On : SwitchState.Off,
            Contact = isSafeOn ? RelayContact.NormallyClosed : RelayContact.NormallyOpen,
        });
        return Loads[^1].Id;
    }
}
