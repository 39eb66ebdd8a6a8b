using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Service;

namespace RackController.Page;

/// <summary>What programs read and ask. <c>Files/openapi.json</c> describes it, and a test holds the two to each other.</summary>
internal static class ApiRoutes
{
    /// <summary>Puts it on the map.</summary>
    public static void Map(IEndpointRouteBuilder routes, IServedRack rack, CancellationToken end)
    {
        routes.MapGet("/api/openapi.json", context => PageFiles.WriteAsync("openapi.json", context)).ForAnyone();
        routes.MapGet("/api/status", context => StatusAsync(context, rack)).For(Role.View);
        routes.MapGet("/api/events", context => EventsAsync(context, rack, end)).For(Role.View).Lasting();
        routes.MapPost("/api/ask", context => AskAsync(context, rack)).For(Role.Operate);
    }

    private static async Task StatusAsync(HttpContext context, IServedRack rack)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var picture = ApiStatusOf.Picture(rack.Site, status);
        await ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, picture).ConfigureAwait(false);
    }

    private static async Task EventsAsync(HttpContext context, IServedRack rack, CancellationToken end)
    {
        using var until = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, end);
        context.Response.ContentType = "text/event-stream";
        // So that whoever follows knows that they do, before anything happens.
        await context.Response.Body.FlushAsync(until.Token).ConfigureAwait(false);
        try
        {
            await SseFormatter.WriteAsync(ItemsAsync(rack, until.Token), context.Response.Body, until.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (until.IsCancellationRequested)
        {
            // One of the two has gone, which is how a stream ends.
            return;
        }
    }

    private static async IAsyncEnumerable<SseItem<string>> ItemsAsync(
        IServedRack rack, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var happened in rack.FollowAsync(cancellation).ConfigureAwait(false))
        {
            yield return new SseItem<string>(ApiStatusOf.Event(happened).ToJsonString(), "happened");
        }
    }

    private static async Task AskAsync(HttpContext context, IServedRack rack)
    {
        if (await ApiAnswers.ReadAsync(context, ApiJson.Default.ApiRequest).ConfigureAwait(false) is not { } asked)
        {
            return;
        }

        if (ApiAsking.RequestOf(asked, rack.Site, Visitor.Of(context).Name, out var complaint) is not { } request)
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status422UnprocessableEntity, complaint).ConfigureAwait(false);
        }
        else if (rack.TryAsk(request))
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status202Accepted, "asked; the events tell what became of it")
                .ConfigureAwait(false);
        }
        else
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "too much waits already; ask again in a moment")
                .ConfigureAwait(false);
        }
    }
}
