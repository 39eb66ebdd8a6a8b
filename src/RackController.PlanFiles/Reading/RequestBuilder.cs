using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>Makes a request of an orders file, once rack and crops are known.</summary>
internal sealed class RequestBuilder
{
    // A season; much longer, and orders change faster than the plan.
    private const int OrdinaryWeeks = 12;
    private const int MostWeeks = 53;
    private const int DaysPerWeek = 7;

    private readonly CropBook book;
    private readonly Complaints complaints;
    private readonly GrowSpace space;
    private readonly LocalDate first;
    private readonly LocalDate last;

    private RequestBuilder(CropBook book, Complaints complaints, GrowSpace space, LocalDate first, LocalDate last)
    {
        this.book = book;
        this.complaints = complaints;
        this.space = space;
        this.first = first;
        this.last = last;
    }

    /// <summary>Makes it, or complains.</summary>
    /// <param name="part">As written.</param>
    /// <param name="site">The racks.</param>
    /// <param name="book">The crops.</param>
    /// <param name="today">The local date at a place, by its zone.</param>
    /// <param name="growing">The growing book that tells what grows already; null where the file does.</param>
    /// <param name="complaints">Where to say what is wrong.</param>
    public static PlanRequest? Build(
        OrdersPart part, Site site, CropBook book, Func<DateTimeZone, LocalDate> today, GrowingBook? growing, Complaints complaints)
    {
        var first = part.From ?? today(site.Zone);
        var last = part.Until ?? first.PlusWeeks(OrdinaryWeeks).PlusDays(-1);
        var days = Period.DaysBetween(first, last);
        if (days < 0 || days >= MostWeeks * DaysPerWeek)
        {
            complaints.Refuse(
                part.UntilPlace, $"the plan would go from {first:uuuu-MM-dd} until {last:uuuu-MM-dd}",
                $"let it end after it begins, and within {MostWeeks} weeks");
            return null;
        }

        var builder = new RequestBuilder(book, complaints, GrowSpace.Of(site, part.DarkTrays), first, last);
        return new PlanRequest
        {
            Site = site.Name,
            Zone = site.Zone,
            Space = builder.space,
            Today = first,
            Until = last,
            Work = part.Work,
            MarginPercent = part.MarginPercent,
            Orders = [.. part.Orders.SelectMany(builder.OrdersOf)],
            Growing = new GrowingBuilder(book, complaints, builder.space, part.Work, first).Build(
                growing is null ? part.Growing : BookGrowing.Of(growing, first, site.Batches.MovesByDate, part.RacksPlace)),
        };
    }

    private IEnumerable<Order> OrdersOf(OrderPart part)
    {
        if (book.Find(part.Crop, part.CropPlace, complaints) is not { } crop)
        {
            return [];
        }

        if (part.Amount is CutWeight && crop.YieldGPerTray <= 0)
        {
            complaints.Refuse(part.CropPlace, $"{crop.Name} is sold by the tray only: its yield is 0 g",
                "write `trays:`, or give its yield under `own-crops`");
            return [];
        }

        if (part.Weekdays is { } weekdays)
        {
            var deliveries = new StandingOrder(
                part.Customer, crop, part.Amount, weekdays, part.From ?? first, part.Until, part.Place.Line).Within(first, last).ToList();
            if (deliveries.Count == 0)
            {
                WarnThatItIsOutside(part, "no delivery of this standing order is");
            }

            return deliveries;
        }

        var due = part.From!.Value;
        if (due < first || due > last)
        {
            WarnThatItIsOutside(part, $"{due:uuuu-MM-dd} is not");
            return [];
        }

        return [new Order(part.Customer, crop, part.Amount, due, part.Place.Line)];
    }

    private void WarnThatItIsOutside(OrderPart part, string what) => complaints.Warn(
        part.Place, $"{what} within the plan, which goes from {first:uuuu-MM-dd} until {last:uuuu-MM-dd}",
        "it is left out; remove it, or let the plan go on for longer");
}
