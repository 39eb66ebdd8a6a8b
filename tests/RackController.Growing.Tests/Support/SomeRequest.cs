using NodaTime;

namespace RackController.Growing.Tests;

/// <summary>A request for nothing yet, on one tier that suits <see cref="SomeCrop"/>.</summary>
internal static class SomeRequest
{
    public static PlanRequest On(LocalDate today, params IsoDayOfWeek[] work) => new()
    {
        Site = "cellar",
        Zone = DateTimeZone.Utc,
        Space = new GrowSpace([new GrowTier("north", 1, new TierKind(4, 180, 2, "coir"), 16)], 8),
        Today = today,
        Until = today.PlusWeeks(4),
        Work = new WorkDays([.. work]),
        MarginPercent = 0,
        Orders = [],
        Growing = [],
    };
}
