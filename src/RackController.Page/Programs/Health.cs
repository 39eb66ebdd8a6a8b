using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Service;

namespace RackController.Page;

/// <summary>For whoever watches the service from outside: whether it answers, and whether its scans are good. Neither says more than
/// that, so anyone may ask.</summary>
internal static class Health
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <summary>Puts it on the map.</summary>
    public static void Map(IEndpointRouteBuilder routes, IServedRack rack)
    {
        // Some who watch ask for the headers alone.
        foreach (var method in (string[])[HttpMethods.Get, HttpMethods.Head])
        {
            routes.MapMethods("/health/live", [method], context => context.Response.WriteAsync("answers\n")).ForAnyone();
            routes.MapMethods("/health/ready", [method], context => ReadyAsync(context, rack)).ForAnyone();
        }
    }

    private static async Task ReadyAsync(HttpContext context, IServedRack rack)
    {
        var said = "scans are good";
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        patience.CancelAfter(Patience);
        try
        {
            if ((await rack.LookAsync(patience.Token).ConfigureAwait(false)).Health.Fault is not null)
            {
                said = "scans fail; see the page or the log";
            }
        }
        catch (OperationCanceledException) when (!context.RequestAborted.IsCancellationRequested)
        {
            said = "no scan within two seconds";
        }

        context.Response.StatusCode = said == "scans are good" ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable;
        await context.Response.WriteAsync(said + "\n", context.RequestAborted).ConfigureAwait(false);
    }
}
