using NodaTime;

namespace RackController.Control.Tests.Demands;

/// <summary>One change of the clock.</summary>
/// <param name="Zone">IANA name of the zone.</param>
/// <param name="At">When it happens.</param>
/// <param name="Before">What the local clock reads as it happens.</param>
/// <param name="After">What it reads the moment after.</param>
public sealed record ZoneTransition(string Zone, Instant At, LocalDateTime Before, LocalDateTime After)
{
    public DateTimeZone DateTimeZone => DateTimeZoneProviders.Tzdb[Zone];

    /// <summary>Whether local times are skipped rather than repeated.</summary>
    public bool IsGap => After > Before;

    /// <summary>A local time of day that is skipped, or that comes twice.</summary>
    public LocalTime InsideTime =>
        (IsGap ? Before.PlusMinutes(10) : After.PlusMinutes(10)).TimeOfDay;

    public override string ToString() => $"{Zone} {After.Date:uuuu-MM-dd}";
}

/// <summary>
/// The transitions of 2026 and 2027 of four zones, one in the southern hemisphere and one that moves by half an hour.
/// Source: IANA time zone database, release 2025b, read with zdump.
/// </summary>
public static class ZoneTransitions
{
    private static readonly ZoneTransition[] All =
    [
        Of("America/New_York", "2026-03-08 07:00", "2026-03-08 02:00", "2026-03-08 03:00"),
        Of("America/New_York", "2026-11-01 06:00", "2026-11-01 02:00", "2026-11-01 01:00"),
        Of("America/New_York", "2027-03-14 07:00", "2027-03-14 02:00", "2027-03-14 03:00"),
        Of("America/New_York", "2027-11-07 06:00", "2027-11-07 02:00", "2027-11-07 01:00"),
        Of("Europe/London", "2026-03-29 01:00", "2026-03-29 01:00", "2026-03-29 02:00"),
        Of("Europe/London", "2026-10-25 01:00", "2026-10-25 02:00", "2026-10-25 01:00"),
        Of("Europe/London", "2027-03-28 01:00", "2027-03-28 01:00", "2027-03-28 02:00"),
        Of("Europe/London", "2027-10-31 01:00", "2027-10-31 02:00", "2027-10-31 01:00"),
        Of("Australia/Sydney", "2026-04-04 16:00", "2026-04-05 03:00", "2026-04-05 02:00"),
        Of("Australia/Sydney", "2026-10-03 16:00", "2026-10-04 02:00", "2026-10-04 03:00"),
        Of("Australia/Sydney", "2027-04-03 16:00", "2027-04-04 03:00", "2027-04-04 02:00"),
        Of("Australia/Sydney", "2027-10-02 16:00", "2027-10-03 02:00", "2027-10-03 03:00"),
        Of("Australia/Lord_Howe", "2026-04-04 15:00", "2026-04-05 02:00", "2026-04-05 01:30"),
        Of("Australia/Lord_Howe", "2026-10-03 15:30", "2026-10-04 02:00", "2026-10-04 02:30"),
        Of("Australia/Lord_Howe", "2027-04-03 15:00", "2027-04-04 02:00", "2027-04-04 01:30"),
        Of("Australia/Lord_Howe", "2027-10-02 15:30", "2027-10-03 02:00", "2027-10-03 02:30"),
    ];

    public static IReadOnlyList<ZoneTransition> List => All;

    public static TheoryData<int> Each => [.. Enumerable.Range(0, All.Length)];

    private static ZoneTransition Of(string zone, string universal, string before, string after) =>
        new(zone, Time(universal).InUtc().ToInstant(), Time(before), Time(after));

    private static LocalDateTime Time(string text) =>
        NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm").Parse(text).Value;
}
