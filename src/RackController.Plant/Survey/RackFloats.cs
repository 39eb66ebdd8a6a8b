using RackController.Model;

namespace RackController.Plant;

/// <summary>The heights at which the floats of a rack end or stop a flood.</summary>
internal sealed class RackFloats(Site site, Rack rack)
{
    /// <summary>Level below which the pump is stopped by the low float or draws air, mm.</summary>
    public double LowestWorkingMm => Math.Max(
        rack.Reservoir.PumpIntakeMm, Of(SensorKind.ReservoirLowFloat).Select(low => low.HeightMm).DefaultIfEmpty(0).Max());

    /// <summary>The high float of a tier, mm; null without one.</summary>
    public double? HighMm(Tier tier) => Lowest(Of(SensorKind.TrayHighFloat, tier).Select(high => high.HeightMm));

    /// <summary>Depth from which a tier reads full, mm; null where nothing reads it, or no fill waits for it.</summary>
    public double? FullMm(Tier tier) => rack.Schedule.Floods.Fill is FillUntilFull full && tier.InUse
        ? Lowest(
            [
                .. Of(SensorKind.TrayFullFloat, tier).Select(one => one.HeightMm),
                .. Of(SensorKind.TrayLevel, tier).Select(_ => full.FullDepthMm),
            ])
        : null;

    private static double? Lowest(IEnumerable<double> heightsMm) => heightsMm.Select(height => (double?)height).Min();

    private IEnumerable<Sensor> Of(SensorKind kind, Tier? tier = null) =>
        site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind == kind && sensor.TierNumber == tier?.Number);
}
