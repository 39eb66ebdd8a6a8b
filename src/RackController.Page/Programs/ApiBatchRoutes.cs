using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;
using RackController.Service;

namespace RackController.Page;

/// <summary>The growing book for programs: what stands where, the record of a batch, putting down what was done, taking up a
/// plan.</summary>
internal sealed class ApiBatchRoutes(IServedRack rack, BookDesk books, Past past)
{
    /// <summary>Puts it on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/batches", ShowAsync).For(Role.View);
        routes.MapGet("/api/batches/one", ShowOneAsync).For(Role.View);
        routes.MapPost("/api/batches/entries", PutDownAsync).For(Role.Operate);
        routes.MapPost("/api/batches/plan", TakeUpAsync).For(Role.Operate).WithMetadata(PlanBody.Limit);
    }

    private Task ShowAsync(HttpContext context) => OrSaidAsync(context, async () =>
    {
        var today = Today(await NowAsync(context).ConfigureAwait(false));
        var book = books.Look();
        var view = new BatchesViewOf(rack.Site, book, today);
        var asks = view.Asks();
        await ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, new JsonObject
        {
            ["batches"] = new JsonArray([.. book.Batches.Select(batch => Of(batch, view, today))]),
            ["changes"] = new JsonArray([.. asks.Changes]),
            ["disagreements"] = new JsonArray([.. asks.Disagreements]),
            ["unreadable"] = new JsonArray([.. books.Unreadable]),
        }).ConfigureAwait(false);
    });

    private Task ShowOneAsync(HttpContext context) => OrSaidAsync(context, async () =>
    {
        var today = Today(await NowAsync(context).ConfigureAwait(false));
        var book = books.Look();
        if (book.Batch(context.Request.Query["lot"].ToString()) is not { } batch)
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status404NotFound, "`lot` names no batch").ConfigureAwait(false);
            return;
        }

        var sums = await past.ReadAsync(history => new BatchSums(rack.Site, history).Of(batch, today), context.RequestAborted)
            .ConfigureAwait(false);
        var view = new BatchesViewOf(rack.Site, book, today);
        await ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, new JsonObject
        {
            ["batch"] = Of(batch, view, today),
            ["facts"] = new JsonArray(
                [.. view.Facts(batch, sums).Select(fact => new JsonObject { ["name"] = fact.Name, ["value"] = fact.Value })]),
            ["entries"] = new JsonArray([.. book.Of(batch.Lot).Select(one => Of(one, book))]),
        }).ConfigureAwait(false);
    });

    private async Task PutDownAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiJson.Default.ApiDeed).ConfigureAwait(false) is not { } sent)
        {
            return;
        }

        await OrSaidAsync(context, async () =>
        {
            var now = await NowAsync(context).ConfigureAwait(false);
            var entry = EntryOf(sent, now, Visitor.Of(context).Name);
            var wrong = entry is null
                ? "`what` is one of sown, moved, harvested, discarded, noted and struck, and needs what is described of it"
                : books.Write(entry);
            if (wrong is null)
            {
                rack.Record("put into the growing book", $"{entry!.By}: {sent.Lot} {BatchWords.Of(entry)}");
            }

            await ApiAnswers.SayAsync(
                context, wrong is null ? StatusCodes.Status201Created : StatusCodes.Status422UnprocessableEntity, wrong ?? "put down")
                .ConfigureAwait(false);
        }).ConfigureAwait(false);
    }

    private async Task TakeUpAsync(HttpContext context)
    {
        using var reader = new StreamReader(context.Request.Body, Encoding.UTF8);
        var json = await reader.ReadToEndAsync(context.RequestAborted).ConfigureAwait(false);
        var now = await NowAsync(context).ConfigureAwait(false);
        var by = Visitor.Of(context).Name;
        var (taken, wrong) = new PlanTakeUp(books, rack.Site).Take(json, now, by);
        if (wrong is null)
        {
            rack.Record("put into the growing book", $"{by} took up a plan: {taken}");
        }

        await ApiAnswers.SayAsync(
            context, wrong is null ? StatusCodes.Status201Created : StatusCodes.Status422UnprocessableEntity, wrong ?? taken)
            .ConfigureAwait(false);
    }

    private BookEntry? EntryOf(ApiDeed sent, Instant now, string by)
    {
        LocalDate? day = sent.Day is null ? Today(now)
            : LocalDatePattern.Iso.Parse(sent.Day) is { Success: true, Value: var date } ? date
            : null;
        var text = BookRules.Cut(sent.Text);
        ImmutableArray<StandsOn> places = sent.Places is { } told
            ? [.. told.Select(place => new StandsOn(place?.Tier ?? "", place?.Trays ?? 0))]
            : [];
        return (sent.What, sent.Lot, day) switch
        {
            ("struck", { } lot, _) when sent.Number is { } number && books.Look().Of(lot).Any(one => one.Number == number) =>
                new EntryStruck(now, by, number, text),
            ("noted", { } lot, _) => new BatchNoted(now, by, lot, text),
            ("sown", { } lot, { } on) => new BatchSown(now, by, lot, on, BookRules.Cut(sent.SeedLot)),
            ("moved", { } lot, { } on) when sent.Places is not null => new BatchMoved(now, by, lot, on, sent.Stage ?? 0, places),
            ("harvested", { } lot, { } on) when sent.Trays is { } trays =>
                new BatchHarvested(now, by, lot, on, trays, sent.WeightG ?? 0, BookRules.Cut(sent.To)) { From = places },
            ("discarded", { } lot, { } on) when sent.Trays is { } trays && text.Length > 0 =>
                new BatchDiscarded(now, by, lot, on, trays, text) { From = places },
            _ => null,
        };
    }

    private JsonObject Of(BookedBatch batch, BatchesViewOf view, LocalDate today)
    {
        var row = view.Row(batch);
        var byDate = rack.Site.Batches.MovesByDate;
        var places = batch.PlacesOn(today, byDate)?.Places ?? [];
        return new JsonObject
        {
            ["lot"] = batch.Lot,
            ["crop"] = batch.Start.Crop,
            ["trays"] = batch.Start.Trays,
            ["traysLeft"] = batch.TraysLeft,
            ["phase"] = Phase(batch.PhaseOn(today, byDate)),
            ["seedLot"] = batch.Sown is { SeedLot.Length: > 0 } sown ? sown.SeedLot : null,
            ["sown"] = batch.Sown is null ? null : Iso(batch.Sown.Day),
            ["places"] = new JsonArray(
                [.. places.Select(place => new JsonObject { ["tier"] = place.Tier, ["trays"] = place.Trays })]),
            ["harvest"] = Iso(batch.Start.Harvest),
            ["next"] = row.Next.Length > 0 ? row.Next : null,
            ["isDue"] = row.IsDue,
        };
    }

    private static JsonObject Of(WrittenEntry one, GrowingBook book) => new()
    {
        ["number"] = one.Number,
        ["at"] = ApiStatusOf.Time(one.Entry.At),
        ["by"] = one.Entry.By,
        ["words"] = BatchWords.Of(one.Entry),
        ["struck"] = book.Struck.GetValueOrDefault(one.Number) is { } struck ? $"by {struck.By}: {struck.Why}" : null,
    };

    private static string Phase(BatchPhase phase) => phase switch
    {
        BatchPhase.Planned => "planned",
        BatchPhase.InTheDark => "in-the-dark",
        BatchPhase.InTheLight => "in-the-light",
        _ => "gone",
    };

    private static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);

    private async Task<Instant> NowAsync(HttpContext context) => (await rack.LookAsync(context).ConfigureAwait(false)).At.Wall;

    private LocalDate Today(Instant now) => now.InZone(rack.Site.Zone).Date;

    private static async Task OrSaidAsync(HttpContext context, Func<Task> answer)
    {
        try
        {
            await answer().ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CouldNotRunException && !context.Response.HasStarted)
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
        }
    }
}
