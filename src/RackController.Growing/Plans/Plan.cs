using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>What to sow, move and harvest when, and on which tier. It is a proposal to a grower; nothing acts on it by itself.</summary>
public sealed record Plan
{
    /// <summary>What it was made from.</summary>
    public required PlanRequest Request { get; init; }

    /// <summary>The batches, by the day on which they are sown.</summary>
    public required ImmutableArray<PlannedBatch> Batches { get; init; }

    /// <summary>The orders that cannot be met, in the order of the file.</summary>
    public required ImmutableArray<Shortfall> Shortfalls { get; init; }

    /// <summary>What would make room for all that is wanted, where room is what lacks.</summary>
    public required ImmutableArray<ExtraRoom> Remedy { get; init; }

    /// <summary>How long the lamp of each tier is to be on, from day to day.</summary>
    public required ImmutableArray<LampSetting> Lamps { get; init; }

    /// <summary>What it is worth, and how well that is known.</summary>
    public required PlanQuality Quality { get; init; }

    /// <summary>Whether something is due and all of it is met.</summary>
    public bool MeetsWhatIsDue => Shortfalls.IsEmpty && !Request.Orders.IsEmpty;
}

/// <summary>A batch with its days and places.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Lot">Its lot code, unique within the plan and the same whenever the same batch is planned for the same sowing.</param>
/// <param name="Timing">Its days.</param>
/// <param name="Stays">Where its trays stand in the light, by day and tier.</param>
public sealed record PlannedBatch(Batch Batch, string Lot, BatchTiming Timing, ImmutableArray<Stay> Stays);

/// <summary>Trays of a batch on a tier for a while.</summary>
/// <param name="Tier">Place of the tier in the plan's space.</param>
/// <param name="Trays">How many insert trays.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The day on which they leave.</param>
public sealed record Stay(int Tier, int Trays, LocalDate From, LocalDate Until);

/// <summary>How long the lamp of a tier is on each day, for a while.</summary>
/// <param name="Tier">Place of the tier in the plan's space.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The day on which that ends.</param>
/// <param name="PhotoperiodH">Hours a day; 0 while nothing stands there.</param>
public sealed record LampSetting(int Tier, LocalDate From, LocalDate Until, double PhotoperiodH);

/// <summary>An order that cannot be met.</summary>
/// <param name="Order">The order.</param>
/// <param name="Reason">Why, in words.</param>
/// <param name="Remedy">The least that would help, in words.</param>
public sealed record Shortfall(Order Order, string Reason, string Remedy);

/// <summary>Room that lacks for a while.</summary>
/// <param name="IsDark">Whether it is blackout space, counted in insert trays; otherwise whole lit tiers.</param>
/// <param name="Count">How much.</param>
/// <param name="From">The first day.</param>
/// <param name="Last">The last day, included.</param>
/// <param name="Like">A tier that it would be like; empty for blackout space.</param>
public sealed record ExtraRoom(bool IsDark, int Count, LocalDate From, LocalDate Last, string Like)
{
    /// <summary>In words: <c>1 more tier from 3 to 9 May</c>.</summary>
    public string Words => IsDark
        ? $"blackout space for {Count} more {(Count == 1 ? "tray" : "trays")} {When}"
        : $"{Count} more {(Count == 1 ? "tier" : "tiers")} like {Like} {When}";

    private string When => From == Last ? $"on {PlanDates.Span(From, Last)}" : $"from {PlanDates.Span(From, Last)}";
}

/// <summary>What a plan is worth, and how well that is known.</summary>
/// <param name="LitTierDays">Days on which a tier is lit, summed over tiers.</param>
/// <param name="LeastLitTierDays">Fewer than that no plan for the same orders can do with; proven.</param>
/// <param name="Moves">Insert trays that are carried from tier to tier, not counting the way out of the dark.</param>
/// <param name="AreShortfallsProven">Whether it is proven that no plan meets more of the orders.</param>
public sealed record PlanQuality(int LitTierDays, int LeastLitTierDays, int Moves, bool AreShortfallsProven)
{
    /// <summary>How far from the best the plan may be at most, %.</summary>
    public double GapPercent => LitTierDays == 0 ? 0 : 100.0 * (LitTierDays - LeastLitTierDays) / LitTierDays;
}
