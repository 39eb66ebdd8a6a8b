using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using RackController.Growing;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Page;

/// <summary>The growing book in the page: what grows where, what is due, putting down what was done, and the record of each
/// batch.</summary>
/// <param name="rack">The rack.</param>
/// <param name="books">The book.</param>
/// <param name="past">The journal, for what batches had.</param>
/// <param name="desk">The draft of the rack file.</param>
internal sealed class BatchRoutes(IServedRack rack, BookDesk books, Past past, ScheduleDesk desk)
{
    private const string Address = "/batches";

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address, ShowAsync).For(Role.View);
        routes.MapGet(Address + "/one", ShowOneAsync).For(Role.View);
        routes.MapGet("/batches.csv", SaveAsync).For(Role.View);
        routes.MapGet(Address + "/records.csv", SaveRecordsAsync).For(Role.View);
        routes.MapPost(Address + "/draft", DraftAsync).For(Role.Configure);
        foreach (var deed in BatchDeeds.All)
        {
            routes.MapGet($"{Address}/{deed}", context => ShowFormAsync(context, deed)).For(Role.Operate);
            routes.MapPost($"{Address}/{deed}", context => PutDownAsync(context, deed)).For(Role.Operate);
        }
    }

    private async Task ShowAsync(HttpContext context)
    {
        var now = await NowAsync(context).ConfigureAwait(false);
        var visitor = Visitor.Of(context);
        var (book, fault) = Look();
        var view = new BatchesViewOf(rack.Site, book, Today(now));
        var sought = context.Request.Query["find"].ToString().Trim();
        var page = new BatchesPage(
            Frame("Batches"), visitor.May(Role.Operate) && fault is null, visitor.May(Role.Configure), fault ?? Unreadable(),
            fault is null ? view.Asks() : new AsksView([], [], Follows: false), sought,
            sought.Length > 0 ? view.Found(sought) : view.Groups());
        await Answer.WithAsync(context, Slices.Batches.Create(page)).ConfigureAwait(false);
    }

    private async Task SaveAsync(HttpContext context)
    {
        var (book, fault) = Look();
        await (fault is null
            ? Csv.WriteAsync(context, "batches.csv", RecordFile.Rows(book, rack.Site))
            : Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, fault)).ConfigureAwait(false);
    }

    private async Task SaveRecordsAsync(HttpContext context)
    {
        var today = Today(await NowAsync(context).ConfigureAwait(false));
        var (book, fault) = Look();
        if (fault is not null)
        {
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, fault).ConfigureAwait(false);
            return;
        }

        try
        {
            var sums = await past.ReadAsync(history => new BatchSums(rack.Site, history).Of(book.Batches, today), context.RequestAborted)
                .ConfigureAwait(false);
            await Csv.WriteAsync(context, "batch-records.csv", BatchRecordFile.Rows(rack.Site, book, sums, today)).ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
        }
    }

    private async Task ShowOneAsync(HttpContext context)
    {
        var now = await NowAsync(context).ConfigureAwait(false);
        var (book, _) = Look();
        if (book.Batch(context.Request.Query["lot"].ToString()) is not { } batch)
        {
            await Answer.SeeOther(context, Address).ConfigureAwait(false);
            return;
        }

        var sums = await SumsAsync(batch, Today(now), context.RequestAborted).ConfigureAwait(false);
        var (view, mayAct) = (new BatchesViewOf(rack.Site, book, Today(now)), Visitor.Of(context).May(Role.Operate));
        var page = new BatchPage(
            Frame(batch.Lot), mayAct, view.Row(batch), view.Facts(batch, sums),
            [.. book.Of(batch.Lot).Reverse().Select(entry => Row(entry, book, mayAct))],
            [
                .. BatchCare.Of(rack.Site, book, batch, Today(now))
                    .Select(done => $"{PageWords.Date(done.At, rack.Site.Zone)} {BatchWords.Of(done)}, by {done.By}"),
            ],
            BatchDeeds.LinksOf(batch));
        await Answer.WithAsync(context, Slices.Batch.Create(page)).ConfigureAwait(false);
    }

    private async Task<GrownSums?> SumsAsync(BookedBatch batch, LocalDate today, CancellationToken cancellation)
    {
        try
        {
            return await past.ReadAsync(history => new BatchSums(rack.Site, history).Of(batch, today), cancellation).ConfigureAwait(false);
        }
        catch (CouldNotRunException)
        {
            // The alarms tell of a journal that cannot be read; what people put down is shown all the same.
            return null;
        }
    }

    private EntryRow Row(WrittenEntry written, GrowingBook book, bool mayAct)
    {
        var struck = book.Struck.GetValueOrDefault(written.Number);
        return new EntryRow(
            written.Number, PageWords.Date(written.Entry.At, rack.Site.Zone), written.Entry.By, BatchWords.Of(written.Entry),
            struck is null ? null : $"struck by {struck.By}: {struck.Why}",
            mayAct && struck is null && written.Entry is BatchEntry about
                ? $"{BatchAddress.Of("strike", about.Lot)}&number={written.Number}"
                : null);
    }

    private async Task ShowFormAsync(HttpContext context, string deed)
    {
        var now = await NowAsync(context).ConfigureAwait(false);
        var (book, _) = Look();
        if (book.Batch(context.Request.Query["lot"].ToString()) is not { } batch)
        {
            await Answer.SeeOther(context, Address).ConfigureAwait(false);
            return;
        }

        await AskAsync(context, new BatchDeeds(rack.Site, book, now), deed, batch, null).ConfigureAwait(false);
    }

    private Task AskAsync(HttpContext context, BatchDeeds deeds, string deed, BookedBatch batch, string? wrong)
    {
        var title = BatchDeeds.Title(deed, batch.Lot);
        var page = new BatchFormPage(
            Frame(title), title, wrong, BatchDeeds.Hints(deed, batch), BatchAddress.Of(deed, batch.Lot), BatchDeeds.Verb(deed),
            BatchAddress.Of(batch.Lot), deeds.Fields(deed, batch, context.Request.Query["number"].ToString()));
        context.Response.StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
        return Answer.WithAsync(context, Slices.BatchForm.Create(page));
    }

    private async Task PutDownAsync(HttpContext context, string deed)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        var now = await NowAsync(context).ConfigureAwait(false);
        var by = Visitor.Of(context).Name;
        var (book, fault) = Look();
        if (fault is not null || book.Batch(context.Request.Query["lot"].ToString()) is not { } batch)
        {
            await Answer.SayAsync(context, StatusCodes.Status409Conflict, fault ?? "There is no such batch.").ConfigureAwait(false);
            return;
        }

        var deeds = new BatchDeeds(rack.Site, book, now);
        var entry = deeds.EntryOf(deed, batch, form, by);
        var wrong = entry is null ? BatchDeeds.WhatIsMissing(form) : Write(entry);
        if (wrong is not null)
        {
            await AskAsync(context, deeds, deed, batch, wrong).ConfigureAwait(false);
            return;
        }

        rack.Record("put into the growing book", $"{by}: {batch.Lot} {BatchWords.Of(entry!)}");
        await Answer.SeeOther(context, deed == "note" || deed == "strike" ? BatchAddress.Of(batch.Lot) : Address).ConfigureAwait(false);
    }

    private async Task DraftAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        if (desk.Draft is not null)
        {
            await Answer.SayAsync(
                context, StatusCodes.Status409Conflict,
                "There is a draft of the rack file already: put it in place on the page of the schedule, or throw it away, and come back.")
                .ConfigureAwait(false);
            return;
        }

        try
        {
            var text = desk.Shelf.Read();
            foreach (var one in BatchAsks.Of(rack.Site, books.Look(), Today(status.At.Wall)).Where(one => one.IsNews))
            {
                if (ForBatchesSection.Put(text, one.Rack, one.Asked) is not { } changed)
                {
                    await Answer.SayAsync(
                        context, StatusCodes.Status409Conflict,
                        $"{one.Rack.Name} cannot have what is asked, or is written so that no line can be put in: write it by hand.")
                        .ConfigureAwait(false);
                    return;
                }

                text = changed;
            }

            desk.Begin(text, status);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Answer.SayAsync(context, StatusCodes.Status500InternalServerError, e.Message).ConfigureAwait(false);
            return;
        }

        await Answer.SeeOther(context, "/schedule/draft").ConfigureAwait(false);
    }

    private string? Write(BookEntry entry)
    {
        try
        {
            return books.Write(entry);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"Nothing was put down: {e.Message}";
        }
    }

    private (GrowingBook Book, string? Fault) Look()
    {
        try
        {
            return (books.Look(), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (
                GrowingBook.Empty,
                $"{e.Message}. The racks run by the schedule that they have; put the file right, or move it away to begin a new book.");
        }
    }

    private string? Unreadable() => books.Unreadable is { IsEmpty: false } numbers
        ? $"This version of the program cannot read the entries {string.Join(", ", numbers)} of the growing book; the others are shown."
        : null;

    private async Task<Instant> NowAsync(HttpContext context) => (await rack.LookAsync(context).ConfigureAwait(false)).At.Wall;

    private LocalDate Today(Instant now) => now.InZone(rack.Site.Zone).Date;

    private FrameView Frame(string title) => new(rack.Site.Name, title, "Batches", IsLive: false);
}
