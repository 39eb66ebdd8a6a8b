using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>The weekdays on which something happens: somebody works, somebody wants a delivery.</summary>
/// <param name="Days">The weekdays, each once.</param>
public sealed record WorkDays(ImmutableArray<IsoDayOfWeek> Days)
{
    /// <summary>Whether a day is one of them.</summary>
    /// <param name="day">A day.</param>
    public bool Has(LocalDate day) => Days.Contains(day.DayOfWeek);
}
