using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Works of upkeep, for programs: the same as the page.</summary>
internal sealed class ApiUpkeepRoutes(IServedRack rack, Past past, UpkeepDesk desk)
{
    private const int MostDone = 1000;

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/upkeep", ShowAsync).For(Role.View);
        routes.MapPost("/api/upkeep/done", DoneAsync).For(Role.Operate);
    }

    private async Task ShowAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        await OrSaidAsync(context, () => ApiAnswers.ToldAsync(context, ApiUpkeepJson.Default.ApiUpkeep, async () =>
        {
            var (book, now) = (desk.Book, status.At.Wall);
            var list = await past.ReadAsync(journal => UpkeepList.Read(rack.Site, journal, book.Upkeep, now), context.RequestAborted)
                .ConfigureAwait(false);
            return new ApiUpkeep(
                [.. list.Works.Select(work => Told(work, now))],
                [.. list.Relays.Select(relay => new ApiRelayLife(relay.Load.Name, relay.Operations, relay.Load.RatedOperations))],
                [.. Told(book).Take(MostDone)]);
        })).ConfigureAwait(false);
    }

    private static ApiUpkeepWork Told(UpkeepStatus work, Instant now) => new(
        work.Rack.Name, work.Work.Key(), work.Work.InWords(), work.IsDue, work.IsOverdue, work.Use.Since, work.Use.WasDone,
        [.. work.Counts.Select(count => new ApiUpkeepCount(Word(count.Unit), count.Count, count.Limit))], work.ExpectedAt(now));

    private static IEnumerable<ApiUpkeepDone> Told(GrowingBook book) =>
        from one in book.Entries.Reverse()
        let done = one.Entry as UpkeepDone
        where done is not null
        select new ApiUpkeepDone(
            one.Number, done.At, done.By, done.Rack, done.Work, done.Note, IsStruck: book.Struck.ContainsKey(one.Number));

    private static string Word(UpkeepUnit unit) => unit switch
    {
        UpkeepUnit.Floods => "floods",
        UpkeepUnit.Days => "days",
        UpkeepUnit.PumpHours => "pumpHours",
        _ => throw new InvariantBrokenException($"every unit of upkeep has its word, {unit} too"),
    };

    private async Task DoneAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiUpkeepJson.Default.ApiUpkeepAsked).ConfigureAwait(false) is not { } asked)
        {
            return;
        }

        var status = await rack.LookAsync(context).ConfigureAwait(false);
        await OrSaidAsync(context, () =>
        {
            var by = Visitor.Of(context).Name;
            if (desk.Find(asked.Rack ?? "", asked.Work ?? "", out var complaint) is not { } found
                || (complaint = desk.Done(found.Rack, found.Work, asked.Note ?? "", by, status.At)) is not null)
            {
                return ApiAnswers.SayAsync(context, StatusCodes.Status422UnprocessableEntity, complaint);
            }

            rack.Record($"upkeep done: {UpkeepViewOf.Title(found.Work, found.Rack)}", $"{by} put it down");
            return ApiAnswers.SayAsync(context, StatusCodes.Status200OK, "put down; it is counted anew from now on");
        }).ConfigureAwait(false);
    }

    private static async Task OrSaidAsync(HttpContext context, Func<Task> answer)
    {
        try
        {
            await answer().ConfigureAwait(false);
        }
        catch (IOException e) when (!context.Response.HasStarted)
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status503ServiceUnavailable, $"nothing was changed: {e.Message}")
                .ConfigureAwait(false);
        }
    }
}
