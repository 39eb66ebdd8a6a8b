using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>Makes batches of orders: what is wanted of one crop for one day, alive or cut, is one sowing, less what grows
/// already.</summary>
public static class Batching
{
    /// <summary>The batches that fill the orders, by the day on which they are due.</summary>
    /// <param name="orders">What is wanted.</param>
    /// <param name="growing">What grows already.</param>
    /// <param name="marginPercent">How much more is grown than was ordered, for what fails, %.</param>
    public static ImmutableArray<Batch> Of(IEnumerable<Order> orders, IEnumerable<Batch> growing, double marginPercent)
    {
        var waiting = growing.OrderBy(batch => batch.UnderWay!.Sown).ThenBy(batch => batch.UnderWay!.Line).ToList();
        var wanted = orders
            .GroupBy(order => (order.Crop, order.Due, IsLive: order.Amount is LiveTrays))
            .OrderBy(group => group.Key.Due)
            .ThenBy(group => group.Key.Crop.Name, StringComparer.Ordinal)
            .ThenBy(group => group.Key.IsLive);
        var batches = new List<Batch>();
        foreach (var group in wanted)
        {
            var (crop, due, isLive) = group.Key;
            var trays = TraysFor(group, marginPercent);
            foreach (var fitting in waiting.Where(batch => batch.Crop == crop && CanServe(batch, due, isLive)).ToList())
            {
                if (trays <= 0)
                {
                    break;
                }

                waiting.Remove(fitting);
                batches.Add(fitting with { Due = due, IsLive = isLive, Orders = [.. group] });
                trays -= fitting.Trays;
            }

            if (trays > 0)
            {
                batches.Add(new Batch { Crop = crop, Trays = trays, Due = due, IsLive = isLive, Orders = [.. group] });
            }
        }

        return [.. batches, .. waiting];
    }

    /// <summary>How many insert trays some orders of one crop take.</summary>
    /// <param name="orders">Orders of one crop, all of them alive or all of them cut.</param>
    /// <param name="marginPercent">How much more is grown than was ordered, %.</param>
    public static int TraysFor(IEnumerable<Order> orders, double marginPercent)
    {
        var trays = orders.Sum(order => order.Amount switch
        {
            LiveTrays live => live.Count,
            CutWeight cut => cut.WeightG / order.Crop.YieldGPerTray,
            _ => throw new Model.InvariantBrokenException("every amount has its trays"),
        });

        // A whole number that a division missed by a hair is that number, not one more.
        return (int)Math.Ceiling((trays * (100 + marginPercent) / 100) - 1e-9);
    }

    private static bool CanServe(Batch batch, LocalDate due, bool isLive)
    {
        var known = batch.UnderWay!;
        var asked = batch with { Due = due, IsLive = isLive };
        var age = Period.DaysBetween(known.Sown, due);
        var waits = Period.DaysBetween(asked.EarliestHarvest, due);
        return age - waits <= batch.Crop.MostDays && age >= batch.Crop.FewestDays;
    }
}
