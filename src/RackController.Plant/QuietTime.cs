using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Estimates for how long nothing that a sensor reports will change: from how far each float is from its water and how fast the
/// water moves. An estimate, since flows change as levels do, so it goes only half the way.
/// </summary>
internal sealed class QuietTime
{
    private const double ShortestS = 0.1;
    private const double MovingS = 1;
    private const double FillingS = 5;
    private const double RestingS = 60;
    private const double StillMPerS = 1e-7;

    private readonly Site site;
    private readonly SimulatedRack[] racks;
    private readonly SensorChannel[] channels;
    private readonly SensorTruth truth;

    public QuietTime(Site site, SimulatedRack[] racks, SensorChannel[] channels, SensorTruth truth)
    {
        this.site = site;
        this.racks = racks;
        this.channels = channels;
        this.truth = truth;
    }

    /// <summary>For how long, at least a tenth of a second.</summary>
    /// <param name="now">The time now.</param>
    public Duration Span(MonotonicTime now)
    {
        var seconds = RestingS;
        foreach (var rack in racks)
        {
            seconds = rack.Water.PumpFlowM3PerS != 0 ? Math.Min(seconds, FillingS) : seconds;
        }

        foreach (var sensor in site.Sensors)
        {
            var channel = channels[sensor.Id.Index];
            var shows = channel.ShowsAt;
            seconds = Math.Min(seconds, shows == MonotonicTime.Never ? RestingS : PlantTime.Seconds(now, shows));
            seconds = Math.Min(seconds, channel.RestlessAfter.TotalSeconds);
            var water = truth.WaterM(sensor, out var rise);
            if (Math.Abs(rise) > StillMPerS)
            {
                seconds = Math.Min(seconds, sensor.IsContact ? HalfWay(sensor.HeightMm / 1000 - water, rise) : MovingS);
            }
        }

        return Duration.FromSeconds(Math.Max(seconds, ShortestS));
    }

    // Away from the float's height nothing comes of it; towards it, half the time it would take.
    private static double HalfWay(double distance, double rise)
    {
        var seconds = distance / rise;
        return seconds < 0 ? RestingS : seconds / 2;
    }
}
