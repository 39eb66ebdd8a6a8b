using NodaTime;

namespace RackController.Growing;

/// <summary>How much of a crop somebody wants: whole trays, alive, or a weight that is cut.</summary>
public abstract record Amount
{
    /// <summary>In words: <c>4 trays</c>, <c>800 g</c>.</summary>
    public abstract string Words { get; }
}

/// <summary>Whole insert trays, alive.</summary>
/// <param name="Count">How many, from 1.</param>
public sealed record LiveTrays(int Count) : Amount
{
    /// <inheritdoc/>
    public override string Words => Count == 1 ? "1 tray" : $"{Count} trays";
}

/// <summary>A weight that is cut.</summary>
/// <param name="WeightG">g, above 0.</param>
public sealed record CutWeight(double WeightG) : Amount
{
    /// <inheritdoc/>
    public override string Words => WeightG >= 1000 ? $"{WeightG / 1000:0.##} kg" : $"{WeightG:0.#} g";
}

/// <summary>One delivery of one crop to one customer. A standing order is many of these.</summary>
/// <param name="Customer">Who wants it, in the grower's words.</param>
/// <param name="Crop">What.</param>
/// <param name="Amount">How much.</param>
/// <param name="Due">On which day it is handed over.</param>
/// <param name="Line">The line of the orders file that asks for it.</param>
public sealed record Order(string Customer, Crop Crop, Amount Amount, LocalDate Due, int Line)
{
    /// <summary>In words: <c>800 g of radish for the inn on 2026-05-04</c>.</summary>
    public string Words => $"{Amount.Words} of {Crop.Name} for {Customer} on {PlanDates.Day(Due)}";
}

/// <summary>The same delivery on every given weekday of a time.</summary>
/// <param name="Customer">Who wants it.</param>
/// <param name="Crop">What.</param>
/// <param name="Amount">How much, each time.</param>
/// <param name="Weekdays">On which weekdays.</param>
/// <param name="From">Not before.</param>
/// <param name="Until">Not after; null without an end.</param>
/// <param name="Line">The line of the orders file that asks for it.</param>
public sealed record StandingOrder(
    string Customer, Crop Crop, Amount Amount, WorkDays Weekdays, LocalDate From, LocalDate? Until, int Line)
{
    /// <summary>Its deliveries within a time.</summary>
    /// <param name="first">The first day.</param>
    /// <param name="last">The last day, included.</param>
    public IEnumerable<Order> Within(LocalDate first, LocalDate last)
    {
        var end = Until is { } until ? LocalDate.Min(until, last) : last;
        for (var day = LocalDate.Max(From, first); day <= end; day = day.PlusDays(1))
        {
            if (Weekdays.Has(day))
            {
                yield return new Order(Customer, Crop, Amount, day, Line);
            }
        }
    }
}
