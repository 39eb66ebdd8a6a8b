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
    /// <param name="complaints">Where to say what is wrong.</param>
    public static PlanRequest? Build(
        OrdersPart part, Site site, CropBook book, Func<DateTimeZone, LocalDate> today, Complaints complaints)
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
            Growing = [.. part.Growing.Select(one => builder.BatchOf(one, part.Work)).OfType<Batch>()],
        };
    }

    private IEnumerable<Order> OrdersOf(OrderPart part)
    {
        if (CropOf(part.Crop, part.CropPlace) is not { } crop)
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
            return new StandingOrder(part.Customer, crop, part.Amount, weekdays, part.From ?? first, part.Until, part.Place.Line)
                .Within(first, last);
        }

        var due = part.From!.Value;
        if (due < first || due > last)
        {
            complaints.Warn(
                part.Place, $"{due:uuuu-MM-dd} is not within the plan, which goes from {first:uuuu-MM-dd} until {last:uuuu-MM-dd}",
                "it is left out; remove it, or let the plan go on for longer");
            return [];
        }

        return [new Order(part.Customer, crop, part.Amount, due, part.Place.Line)];
    }

    private Batch? BatchOf(GrowingPart part, WorkDays work)
    {
        if (CropOf(part.Crop, part.CropPlace) is not { } crop)
        {
            return null;
        }

        if (part.Tier is { } tier && space.Tiers.All(one => one.Name != tier))
        {
            complaints.Refuse(part.TierPlace, $"there is no tier {Quote.Text(tier)} to grow on",
                NearestName.Advice(tier, [.. space.Tiers.Select(one => one.Name)]));
            return null;
        }

        var batch = new Batch
        {
            Crop = crop,
            Trays = part.Trays,
            Due = part.Sown.PlusDays(crop.MostDays),
            IsLive = false,
            Orders = [],
            UnderWay = new UnderWay(part.Sown, part.Lit, part.Tier, part.Place.Line),
        };
        if (BatchTimings.Of(batch with { Due = LocalDate.Max(batch.Due, first) }, work, first).IsEmpty)
        {
            complaints.Refuse(
                part.Place, $"{crop.Name} sown on {part.Sown:uuuu-MM-dd} has no day left to be harvested on",
                "check its dates; if they are right, it is past its time: take it out and remove it here");
            return null;
        }

        return batch;
    }

    private Crop? CropOf(string name, Place place)
    {
        if (book.Find(name) is { } crop)
        {
            return crop;
        }

        complaints.Refuse(place, $"there is no crop {Quote.Text(name)}", NearestName.Advice(name, book.Names));
        return null;
    }
}
