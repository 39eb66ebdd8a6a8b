using System.Globalization;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Turns a picture of a site into what the page shows of one rack.</summary>
internal sealed class RackViewOf(Site site, Rack rack, SiteStatus status, GrowsOn grows)
{
    private readonly FloodPhase phase = status.Floods[rack.Id.Index];

    /// <summary>Makes the view.</summary>
    public RackView View() => new(
        rack.Id.Index, rack.Name, phase, status.Asked[rack.Id.Index],
        [.. rack.Tiers.Reverse().Select(Tier)],
        Reservoir(),
        [.. status.Loads.Where(load => site[load.Load].Rack == rack.Id).Select(Load)],
        [.. status.Sensors.Where(sensor => sensor.Sensor.Rack == rack.Id).Select(sensor => Reading(sensor, rack.Name, site.Units))]);

    /// <summary>What a sensor says, without the name of its rack or circuit.</summary>
    public static ReadingView Reading(SensorStatus status, string place, ShownUnits units) => new(
        Short(status.Sensor.Name, place), ReadingWords.Words(status, units), status.Doubt is not null || ReadingWords.IsAbnormal(status));

    /// <summary>A name without that of its rack or circuit.</summary>
    public static string Short(string name, string place) =>
        name.StartsWith(place + "/", StringComparison.Ordinal) ? name[(place.Length + 1)..] : name;

    private LoadView Load(LoadWhy why)
    {
        var load = site[why.Load];
        return new LoadView(Short(load.Name, rack.Name), load.Kind, why.State == SwitchState.On, why);
    }

    private TierView Tier(Tier tier) => new(
        tier.Number, status.TiersInUse[rack.Id.Index][tier.Number - 1], IsOn(tier.Light), IsOn(tier.Valve), Water(tier),
        tier.Tray.StandpipeHeightMm / tier.Tray.RimDepthMm,
        string.Create(CultureInfo.InvariantCulture, $"{tier.Tray.Contents.InsertTrays} trays, {tier.Tray.Contents.Media}"),
        grows.Words(rack, tier.Number));

    private string Words(SensorStatus of) => ReadingWords.Words(of, site.Units);

    private bool? IsOn(LoadId? load) => load is { } id ? status.Loads[id.Index].State == SwitchState.On : null;

    private WaterView Water(Tier tier)
    {
        if (Of(SensorKind.TrayHighFloat, tier.Number) is { Doubt: null } high && ReadingWords.IsAbnormal(high))
        {
            return new WaterView(1, IsMeasured: true, "water too high", IsOdd: true);
        }

        if (Of(SensorKind.TrayLevel, tier.Number) is { } level)
        {
            return level.Doubt is null
                ? new WaterView(Math.Clamp(level.Reading.Value / tier.Tray.RimDepthMm, 0, 1), true, Words(level), false)
                : new WaterView(0, IsMeasured: false, $"level {Words(level)}", IsOdd: true);
        }

        var standpipe = tier.Tray.StandpipeHeightMm / tier.Tray.RimDepthMm;
        if (Of(SensorKind.TrayFullFloat, tier.Number) is { Doubt: null, Reading.Value: >= 0.5 })
        {
            return new WaterView(standpipe, IsMeasured: true, "full", IsOdd: false);
        }

        return phase switch
        {
            FloodPhase.Filling => new WaterView(standpipe / 2, IsMeasured: false, "filling", IsOdd: false),
            FloodPhase.Soaking => new WaterView(standpipe, IsMeasured: false, "soaking", IsOdd: false),
            FloodPhase.Draining => new WaterView(standpipe / 2, IsMeasured: false, "draining", IsOdd: false),
            _ => new WaterView(0, IsMeasured: false, "", IsOdd: false),
        };
    }

    private ReservoirView Reservoir()
    {
        var level = Of(SensorKind.ReservoirLevel, tier: null);
        var low = Of(SensorKind.ReservoirLowFloat, tier: null);
        var isLow = low is not null && (low.Doubt is not null || ReadingWords.IsAbnormal(low));
        var lowWords = low switch
        {
            null => null,
            { Doubt: { } doubt } => $"low float {doubt}",
            _ => isLow ? "below the low float" : "above the low float",
        };
        if (level is null)
        {
            return new ReservoirView(null, lowWords ?? "not measured", isLow);
        }

        return level.Doubt is null
            ? new ReservoirView(
                Math.Clamp(level.Reading.Value / rack.Reservoir.DepthMm, 0, 1), isLow ? $"{Words(level)}, {lowWords}"
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Words(level)}, {site.Units.Of("L").Words(level.Reading.Value * rack.Reservoir.AreaM2, 0)}"), isLow)
            : new ReservoirView(null, $"level {Words(level)}", IsOdd: true);
    }

    private SensorStatus? Of(SensorKind kind, int? tier) =>
        status.Sensors.FirstOrDefault(at => at.Sensor.Kind == kind && at.Sensor.Rack == rack.Id && at.Sensor.TierNumber == tier);
}
