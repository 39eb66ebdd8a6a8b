using NodaTime;
using NodaTime.Text;
using NodaTime.TimeZones;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A day as the people of a site live it, with the change of the clocks that may fall into it.</summary>
/// <param name="Site">The site.</param>
/// <param name="Date">The local date.</param>
public sealed record LocalDay(Site Site, LocalDate Date)
{
    private static readonly LocalTimePattern ToTheMinute = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalTimePattern ToTheSecond = LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss");
    private static readonly LocalDatePattern InFull = LocalDatePattern.CreateWithInvariantCulture("dddd d MMMM uuuu");

    /// <summary>Its first moment.</summary>
    public Instant Start => Date.AtStartOfDayInZone(Site.Zone).ToInstant();

    /// <summary>The first moment of the next day.</summary>
    public Instant End => Date.PlusDays(1).AtStartOfDayInZone(Site.Zone).ToInstant();

    /// <summary>Whether the clocks change on it.</summary>
    public bool ClocksChange => Change is not null;

    /// <summary>The date in words: <c>Sunday 29 March 2026</c>.</summary>
    public string Words => InFull.Format(Date);

    /// <summary>What the clocks do, in words; null on a day of 24 hours.</summary>
    public string? ChangeInWords => Change is not { } change
        ? null
        : $"This day has {(End - Start).TotalHours:0.##} hours: clocks go from "
            + $"{Name(change.Before, change.At)} to {Name(change.After, change.At)}.";

    /// <summary>A moment as a time of day, to the second where it needs to be; with the zone's name on days on which the
    /// clocks change, because there a time of day alone can mean two moments.</summary>
    /// <param name="at">The moment.</param>
    public string Clock(Instant at)
    {
        var interval = Site.Zone.GetZoneInterval(at);
        return ClocksChange ? $"{Time(interval, at)} {interval.Name}" : Time(interval, at);
    }

    /// <summary>A moment as a time of day with the zone's name.</summary>
    /// <param name="at">The moment.</param>
    public string ClockWithZone(Instant at) => Name(Site.Zone.GetZoneInterval(at), at);

    private (Instant At, ZoneInterval Before, ZoneInterval After)? Change
    {
        get
        {
            var first = Site.Zone.GetZoneInterval(Start);
            return first.HasEnd && first.End < End
                ? (first.End, first, Site.Zone.GetZoneInterval(first.End))
                : null;
        }
    }

    private static string Name(ZoneInterval interval, Instant at) => $"{Time(interval, at)} {interval.Name}";

    // To the nearest second: a scan's tenths mean nothing to a person.
    private static string Time(ZoneInterval interval, Instant at)
    {
        var rounded = Instant.FromUnixTimeSeconds((at + Duration.FromMilliseconds(500)).ToUnixTimeSeconds());
        var time = rounded.WithOffset(interval.WallOffset).TimeOfDay;
        return (time.Second == 0 ? ToTheMinute : ToTheSecond).Format(time);
    }
}
