using System.Globalization;
using NodaTime;

namespace RackController.Growing;

/// <summary>How dates are written in a plan.</summary>
public static class PlanDates
{
    /// <summary>A day with its weekday: <c>Mon 4 May</c>. The year is in the plan's heading.</summary>
    /// <param name="day">A day.</param>
    public static string Day(LocalDate day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>A day in full: <c>Monday 4 May 2026</c>.</summary>
    /// <param name="day">A day.</param>
    public static string Full(LocalDate day) => day.ToString("dddd d MMMM uuuu", CultureInfo.InvariantCulture);

    /// <summary>From one day to another, both included: <c>3 to 9 May</c>, <c>28 Apr to 3 May</c>, <c>3 May</c>.</summary>
    /// <param name="first">The first day.</param>
    /// <param name="last">The last day.</param>
    public static string Span(LocalDate first, LocalDate last) =>
        first == last ? DayOfMonth(first)
        : first.Month == last.Month && first.Year == last.Year ? $"{first.Day} to {DayOfMonth(last)}"
        : $"{DayOfMonth(first)} to {DayOfMonth(last)}";

    /// <summary>A day without its weekday: <c>4 May</c>.</summary>
    /// <param name="day">A day.</param>
    public static string DayOfMonth(LocalDate day) => day.ToString("d MMM", CultureInfo.InvariantCulture);
}
