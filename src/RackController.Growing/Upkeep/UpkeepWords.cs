using System.Globalization;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>Where works of upkeep stand, in words, the same on every face.</summary>
public static class UpkeepWords
{
    /// <summary>Why it is due, or how far it is: <c>220 of 200 floods, 20 of 60 days, since 3 May 2026</c>.</summary>
    /// <param name="status">The work.</param>
    /// <param name="zone">Whose days are named.</param>
    public static string Why(UpkeepStatus status, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(status);
        var since = Day(status.Use.Since, zone);
        return string.Join(", ", status.Counts.Select(Reached))
            + (status.Use.WasDone ? $", since {since}" : $", since the record began on {since}; never put down as done");
    }

    /// <summary>A count with its limit: <c>220 of 200 floods</c>.</summary>
    /// <param name="count">The count.</param>
    /// <exception cref="InvariantBrokenException">It is of no unit.</exception>
    public static string Reached(UpkeepCount count)
    {
        ArgumentNullException.ThrowIfNull(count);
        return count.Unit switch
        {
            UpkeepUnit.Floods => $"{Number(count.Count)} of {Number(count.Limit)} floods",
            UpkeepUnit.Days => $"{Number(count.Count)} of {Number(count.Limit)} days",
            UpkeepUnit.PumpHours => $"{Number(Math.Floor(count.Count))} of {Number(count.Limit)} h of the pump",
            _ => throw new InvariantBrokenException($"every unit of upkeep has its words, {count.Unit} too"),
        };
    }

    /// <summary>How long a work may wait: <c>every 50 floods or 14 days</c>.</summary>
    /// <param name="every">The interval.</param>
    public static string Interval(UpkeepInterval every)
    {
        ArgumentNullException.ThrowIfNull(every);
        string?[] parts =
        [
            every.Floods is { } floods ? Count(floods, "flood", "floods") : null,
            every.Days is { } days ? Count(days, "day", "days") : null,
            every.PumpOn is { } pumpOn ? $"{Number(pumpOn.TotalHours)} h of the pump" : null,
        ];
        return $"every {string.Join(" or ", parts.OfType<string>())}";
    }

    /// <summary>How many works are due, in a line; null while none is.</summary>
    /// <param name="works">How many, from 0.</param>
    public static string? HowManyAreDue(int works) => works switch
    {
        0 => null,
        1 => "1 work of upkeep is due",
        _ => string.Create(CultureInfo.InvariantCulture, $"{works} works of upkeep are due"),
    };

    /// <summary>A day: <c>3 May 2026</c>.</summary>
    /// <param name="at">A time of it.</param>
    /// <param name="zone">Whose day.</param>
    public static string Day(Instant at, DateTimeZone zone) => at.InZone(zone).ToString("d MMM uuuu", CultureInfo.InvariantCulture);

    private static string Count(int count, string one, string many) => $"{count} {(count == 1 ? one : many)}";

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
