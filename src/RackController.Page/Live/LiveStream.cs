using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>Sends a follower what is new, as server-sent events: the time once a second, and each part of the page that changed.</summary>
internal sealed class LiveStream(Broadcast broadcast, CancellationToken end)
{
    /// <summary>Serves one follower until one of the two goes.</summary>
    public async Task ServeAsync(HttpContext context)
    {
        broadcast.Join(end);
        using var until = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, end);
        try
        {
            context.Response.ContentType = "text/event-stream";
            await SseFormatter.WriteAsync(EventsAsync(until.Token), context.Response.Body, until.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (until.IsCancellationRequested)
        {
            // One of the two has gone, which is how a stream ends.
            return;
        }
        finally
        {
            broadcast.Leave();
        }
    }

    private async IAsyncEnumerable<SseItem<string>> EventsAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        long known = 0;
        while (true)
        {
            var news = await broadcast.AfterAsync(known, cancellation).ConfigureAwait(false);
            known = news.Version;
            foreach (var region in news.Regions)
            {
                var content = new JsonObject { ["id"] = region.Id, ["html"] = region.Html };
                yield return new SseItem<string>(content.ToJsonString(), "region");
            }

            yield return new SseItem<string>(news.Clock, "clock");
        }
    }
}
