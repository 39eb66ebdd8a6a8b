using System.Globalization;
using NodaTime;
using NodaTime.TimeZones;

namespace RackController.Control;

/// <summary>How the local times of a schedule become instants: a time that the clock skips happens at the first moment
/// after the gap, and one that comes twice happens the first time.</summary>
internal static class LocalClock
{
    private static readonly ZoneLocalMappingResolver Resolver =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    /// <summary>When a local time of a day happens.</summary>
    public static Instant Happens(this DateTimeZone zone, LocalDate date, LocalTime time) =>
        zone.ResolveLocal(date + time, Resolver).ToInstant();

    /// <summary>A time as people say it: <c>13:00</c>, and with its date when it lies a day or more away from now.</summary>
    public static string SayTime(this DateTimeZone zone, Instant time, Instant now)
    {
        var far = time - now >= Duration.FromDays(1) || now - time >= Duration.FromDays(1);
        return time.InZone(zone).ToString(far ? "HH:mm 'on' yyyy-MM-dd" : "HH:mm", CultureInfo.InvariantCulture);
    }
}
