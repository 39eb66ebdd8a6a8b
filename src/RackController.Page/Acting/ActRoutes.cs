using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What can be asked of a running rack. A stop is one press. Everything else is shown first, with what comes of it, and asked
/// for by a second press.</summary>
internal static class ActRoutes
{
    /// <summary>Puts them on the map.</summary>
    public static void Map(IEndpointRouteBuilder routes, IServedRack rack)
    {
        routes.MapPost("/stop", context => StopAsync(context, rack, null)).ForAnyone();
        foreach (var each in rack.Site.Racks)
        {
            routes.MapPost($"/racks/{each.Id.Index}/stop", context => StopAsync(context, rack, each.Id)).ForAnyone();
            foreach (var choice in RackChoices.Of(each))
            {
                var address = $"/racks/{each.Id.Index}/{choice.Address}";
                routes.MapGet(address, context => ShowAsync(context, rack, choice)).For(Role.Operate);
                routes.MapPost(address, context => AskAsync(context, rack, choice)).For(Role.Operate);
            }
        }

        AlarmRoutes.Map(routes, rack);
    }

    private static Task StopAsync(HttpContext context, IServedRack rack, RackId? which)
    {
        rack.TryAsk(new Stop(Visitor.Of(context).Name, which));
        return Answer.SeeOther(context, Visitor.Of(context).Role is null ? SignInRoutes.AfterStop : "/");
    }

    private static async Task ShowAsync(HttpContext context, IServedRack rack, Choice choice)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var page = new ConfirmPage(
            new FrameView(rack.Site.Name, choice.Title, "Now", IsLive: false), choice.Title, [.. choice.Consequences(rack.Site, status)],
            choice.Verb, context.Request.Path, []);
        await Answer.WithAsync(context, Slices.Confirm.Create(page)).ConfigureAwait(false);
    }

    private static Task AskAsync(HttpContext context, IServedRack rack, Choice choice) =>
        rack.TryAsk(choice.Request(Visitor.Of(context).Name)) ? Answer.SeeOther(context, "/") : Busy(context);

    /// <summary>Too many requests wait for the next scan.</summary>
    public static Task Busy(HttpContext context) =>
        Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "Too much waits already; try again in a moment.");
}
