using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>Everything that a plan is made from.</summary>
public sealed record PlanRequest
{
    /// <summary>What the grower calls the place.</summary>
    public required string Site { get; init; }

    /// <summary>Its time zone, for whoever puts the plan into a calendar.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>The room that there is.</summary>
    public required GrowSpace Space { get; init; }

    /// <summary>The first day on which anything can be done.</summary>
    public required LocalDate Today { get; init; }

    /// <summary>The last day of the plan.</summary>
    public required LocalDate Until { get; init; }

    /// <summary>On which weekdays somebody works.</summary>
    public required WorkDays Work { get; init; }

    /// <summary>How much more is grown than was ordered, %.</summary>
    public required double MarginPercent { get; init; }

    /// <summary>Every delivery that is wanted, in the order of the file: where not all can be met, the earlier line goes first.</summary>
    public required ImmutableArray<Order> Orders { get; init; }

    /// <summary>What grows already; its trays are for the orders that it can serve, the earliest first.</summary>
    public required ImmutableArray<Batch> Growing { get; init; }
}
