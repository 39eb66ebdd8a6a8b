using System.Text.Json.Nodes;
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
        await OrSaidAsync(context, () => ApiAnswers.ToldAsync(context, async () =>
        {
            var (book, now) = (desk.Book, status.At.Wall);
            var list = await past.ReadAsync(journal => UpkeepList.Read(rack.Site, journal, book.Upkeep, now), context.RequestAborted)
                .ConfigureAwait(false);
            return new JsonObject
            {
                ["works"] = new JsonArray([.. list.Works.Select(work => Told(work, now))]),
                ["relays"] = new JsonArray([.. list.Relays.Select(Told)]),
                ["done"] = new JsonArray([.. Told(book).Take(MostDone)]),
            };
        })).ConfigureAwait(false);
    }

    private static JsonObject Told(UpkeepStatus work, Instant now) => new()
    {
        ["rack"] = work.Rack.Name,
        ["work"] = work.Work.Key(),
        ["what"] = work.Work.InWords(),
        ["isDue"] = work.IsDue,
        ["isOverdue"] = work.IsOverdue,
        ["since"] = ApiStatusOf.Time(work.Use.Since),
        ["wasDone"] = work.Use.WasDone,
        ["counts"] = new JsonArray([.. work.Counts.Select(Told)]),
        ["expectedAt"] = ApiStatusOf.Time(work.ExpectedAt(now)),
    };

    private static JsonObject Told(UpkeepCount count) => new()
    {
        ["of"] = Word(count.Unit),
        ["count"] = count.Count,
        ["limit"] = count.Limit,
    };

    private static JsonObject Told(RelayLife relay) => new()
    {
        ["load"] = relay.Load.Name,
        ["operations"] = relay.Operations,
        ["ratedOperations"] = relay.Load.RatedOperations,
    };

    private static IEnumerable<JsonObject> Told(GrowingBook book) =>
        from one in book.Entries.Reverse()
        let done = one.Entry as UpkeepDone
        where done is not null
        select new JsonObject
        {
            ["number"] = one.Number,
            ["at"] = ApiStatusOf.Time(done.At),
            ["by"] = done.By,
            ["rack"] = done.Rack,
            ["work"] = done.Work,
            ["note"] = done.Note,
            ["isStruck"] = book.Struck.ContainsKey(one.Number),
        };

    private static string Word(UpkeepUnit unit) => unit switch
    {
        UpkeepUnit.Floods => "floods",
        UpkeepUnit.Days => "days",
        UpkeepUnit.PumpHours => "pumpHours",
        _ => throw new InvariantBrokenException($"every unit of upkeep has its word, {unit} too"),
    };

    private async Task DoneAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiJson.Default.ApiUpkeepAsked).ConfigureAwait(false) is not { } asked)
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
