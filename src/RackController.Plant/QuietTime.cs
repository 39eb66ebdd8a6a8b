using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Estimates for how long nothing that a sensor reports will change: from how far each float is from its water and how fast the
/// water moves. An estimate, since flows change as levels do, so it goes only half the way.
/// </summary>
internal sealed class QuietTime
{
    // The default period of a scan, which sees nothing sooner.
    private const double ShortestS = 0.1;

    // A measured value that moves is worth a new reading every second.
    private const double MeasuredS = 1;

    // Water under way that no sensor watches, and a rack at rest: how long an estimate is let stand unlooked at.
    private const double MovingS = 2;
    private const double RestingS = 60;

    // Slower than this water stands still: 0.1 um/s is 0.36 mm an hour, 1 uL/s is 0.06 mL a minute.
    private const double StillMPerS = 1e-7;
    private const double StillM3PerS = 1e-9;

    private readonly Site site;
    private readonly SimulatedRack[] racks;
    private readonly SensorChannel[] channels;

    public QuietTime(Site site, SimulatedRack[] racks, SensorChannel[] channels)
    {
        this.site = site;
        this.racks = racks;
        this.channels = channels;
    }

    /// <summary>For how long, at least a tenth of a second.</summary>
    /// <param name="now">The time now.</param>
    public Duration Span(MonotonicTime now)
    {
        var seconds = RestingS;
        foreach (var rack in racks)
        {
            seconds = Math.Min(seconds, OfRack(rack));
        }

        foreach (var sensor in site.Sensors)
        {
            seconds = Math.Min(seconds, OfFaults(channels[sensor.Id.Index], now));
            seconds = sensor.Rack is { } id ? Math.Min(seconds, OfSensor(sensor, racks[id.Index], now)) : seconds;
        }

        return Duration.FromSeconds(Math.Max(seconds, ShortestS));
    }

    // Water that no sensor watches is still looked at every few seconds, and may reach an edge and then the floor.
    private static double OfRack(SimulatedRack rack)
    {
        var seconds = rack.Water.PumpFlowM3PerS != 0 ? MovingS : RestingS;
        for (var index = 0; index < rack.Rack.Tiers.Length; index++)
        {
            var toEdge = rack.Rack.Tiers[index].Tray.RimDepthMm / 1000 - rack.Water.TrayDepthM(index);
            var rise = rack.Water.TrayRiseMPerS(index);
            seconds = Math.Min(seconds, Math.Abs(rise) > StillMPerS ? MovingS : RestingS);
            seconds = Math.Min(seconds, HalfWay(toEdge, rise));
        }

        return seconds;
    }

    private static double OfFaults(SensorChannel channel, MonotonicTime now)
    {
        var shows = channel.ShowsAt;
        var seconds = shows == MonotonicTime.Never ? RestingS : PlantTime.Seconds(now, shows);
        return Math.Min(seconds, channel.StillFor(now).TotalSeconds);
    }

    private static double OfSensor(Sensor sensor, SimulatedRack rack, MonotonicTime now)
    {
        var water = rack.Water;
        var tier = (sensor.TierNumber ?? 1) - 1;
        switch (sensor.Kind)
        {
            case SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat:
                return HalfWay(sensor.HeightMm / 1000 - water.ReservoirDepthM, water.ReservoirRiseMPerS);
            case SensorKind.TrayFullFloat or SensorKind.TrayHighFloat:
                return HalfWay(sensor.HeightMm / 1000 - water.TrayDepthM(tier), water.TrayRiseMPerS(tier));
            case SensorKind.LeakRope:
                return rack.OnFloorM3 < SensorTruth.RopeWetM3 && water.SpillM3PerS > 0 ? ShortestS : RestingS;
            case SensorKind.TrayLevel:
                return Math.Abs(water.TrayRiseMPerS(tier)) > StillMPerS ? MeasuredS : RestingS;
            case SensorKind.PumpFlow:
                return Math.Abs(water.PumpFlowM3PerS) > StillM3PerS ? MeasuredS : RestingS;
            default:
                return SensorTruth.IsSlow(sensor.Kind) && rack.Climate.Moves
                    ? PlantTime.Seconds(now, rack.Climate.NextSample)
                    : RestingS;
        }
    }

    // Away from the threshold nothing comes of it; towards it, half the time it would take.
    private static double HalfWay(double distanceM, double riseMPerS)
    {
        var seconds = distanceM / riseMPerS;
        return Math.Abs(riseMPerS) > StillMPerS && seconds >= 0 ? seconds / 2 : RestingS;
    }
}
