using System.Collections.Immutable;
using NodaTime;
using NodaTime.TimeZones;

namespace RackController.Bench;

/// <summary>The air of the room at a local time of every day.</summary>
/// <param name="At">The local time. One that the clocks skip is the first moment after the gap; one that comes twice, the first.</param>
/// <param name="AirC">Temperature, degrees Celsius.</param>
/// <param name="HumidityPercent">Relative humidity, %.</param>
public sealed record RoomPoint(LocalTime At, double AirC, double HumidityPercent);

/// <summary>How the air of the room runs over the day, the same every day: evenly from each of its points to the next.</summary>
/// <param name="Points">The points, each at a time of its own, in their order; at least one.</param>
public sealed record RoomProfile(ImmutableArray<RoomPoint> Points)
{
    private static readonly ZoneLocalMappingResolver Reading =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    /// <summary>The air at a time.</summary>
    /// <param name="time">The time.</param>
    /// <param name="zone">The zone of the site.</param>
    public (double AirC, double HumidityPercent) At(Instant time, DateTimeZone zone)
    {
        var (left, from) = Around(time, zone).Last(point => point.At <= time);
        var (reached, to) = After(time, zone);
        var share = (time - left) / (reached - left);
        return (Between(from.AirC, to.AirC, share), Between(from.HumidityPercent, to.HumidityPercent, share));
    }

    /// <summary>The next point that the air reaches.</summary>
    /// <param name="time">The time after which.</param>
    /// <param name="zone">The zone of the site.</param>
    public (Instant At, RoomPoint Point) After(Instant time, DateTimeZone zone) =>
        Around(time, zone).First(point => point.At > time);

    private IEnumerable<(Instant At, RoomPoint Point)> Around(Instant time, DateTimeZone zone) =>
        from days in Enumerable.Range(-1, 3)
        from point in Points
        select (zone.ResolveLocal(time.InZone(zone).Date.PlusDays(days) + point.At, Reading).ToInstant(), point);

    private static double Between(double from, double to, double share) => from + share * (to - from);
}
