using NodaTime;

namespace RackController.Verbs;

/// <summary>The local date, by the clock of this machine.</summary>
internal static class Today
{
    /// <summary>The date at a place.</summary>
    /// <param name="zone">Where.</param>
    public static LocalDate At(DateTimeZone zone) => SystemClock.Instance.GetCurrentInstant().InZone(zone).Date;
}
