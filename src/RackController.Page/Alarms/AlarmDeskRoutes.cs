using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using RackController.Control;
using RackController.Service;

namespace RackController.Page;

/// <summary>The page of alarms: what is not normal, what can be done with it, and how good an alarm system it is.</summary>
internal sealed class AlarmDeskRoutes(IServedRack rack, Past past, NoticesView notices)
{
    private static readonly ImmutableArray<int> hoursToShelve = [1, 2, 4, 8, 12, 24];

    private readonly AlarmBook book = new(rack.Site);

    /// <summary>Puts it on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/alarms", ShowAsync).For(Role.View);
        routes.MapGet("/alarms/shelve", ShowShelveAsync).For(Role.Operate);
        routes.MapPost("/alarms/shelve", context => AskAsync(context, Shelving)).For(Role.Operate);
        MapConfirmed(
            routes, "/alarms/unshelve", "Off the shelf", key => $"Take {key} off the shelf", (by, key) => new Unshelve(by, key),
            ["It is in sight again at once, if its condition is still there.", "Its interlock was never off."]);
        MapConfirmed(
            routes, "/alarms/out-of-service", "Out of service", key => $"Take {key} out of service",
            (by, key) => new SetAlarmOutOfService(by, key, OutOfService: true),
            [
                "Nobody is told of it any more, until somebody puts it back: also over a restart.",
                "Its interlock goes on: what it holds off stays off.",
                "For maintenance only. Whoever only wants quiet for some hours shelves it.",
            ]);
        MapConfirmed(
            routes, "/alarms/back-in-service", "Back in service", key => $"Put {key} back into service",
            (by, key) => new SetAlarmOutOfService(by, key, OutOfService: false),
            ["It calls again when its condition is there, and at once if it is there now."]);
    }

    private async Task ShowAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var view = new AlarmDeskView(rack.Site, book);
        PastAlarms? found = null;
        string? fault = null;
        try
        {
            found = await past.ReadAsync(
                journal => PastAlarms.Read(journal, view.Span(status.At.Wall, journal.Begins())), context.RequestAborted)
                .ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            fault = e.Message;
        }

        var page = view.Page(Frame("Alarms"), Visitor.Of(context).May(Role.Operate), status, found, fault);
        await Answer.WithAsync(context, Slices.AlarmDesk.Create(page with { AreNoticesInTrouble = notices.AreInTrouble }))
            .ConfigureAwait(false);
    }

    private Task ShowShelveAsync(HttpContext context)
    {
        var key = context.Request.Query["alarm"].ToString();
        return book.CanBePutAside(key)
            ? Answer.WithAsync(context, Slices.Shelve.Create(new ShelvePage(
                Frame("Shelve an alarm"), key,
                [
                    "It is out of sight until then, and comes back by itself.",
                    "Its interlock goes on: what it holds off stays off.",
                    $"If nobody acts: {book.OfSite.First(known => known.Key == key).Text.Consequence}.",
                ],
                hoursToShelve)))
            : Answer.SeeOther(context, "/alarms");
    }

    private void MapConfirmed(
        IEndpointRouteBuilder routes, string address, string verb, Func<string, string> title,
        Func<string, string, OperatorRequest> request, ImmutableArray<string> consequences)
    {
        routes.MapGet(address, context => ConfirmAsync(context, title, verb, consequences)).For(Role.Operate);
        routes.MapPost(address, context => AskAsync(context, (by, form) => request(by, form["alarm"].ToString()))).For(Role.Operate);
    }

    private Task ConfirmAsync(HttpContext context, Func<string, string> title, string verb, ImmutableArray<string> consequences)
    {
        var key = context.Request.Query["alarm"].ToString();
        return book.CanBePutAside(key)
            ? Answer.WithAsync(context, Slices.Confirm.Create(new ConfirmPage(
                Frame(title(key)), title(key), consequences, verb, context.Request.Path, [new HiddenField("alarm", key)])))
            : Answer.SeeOther(context, "/alarms");
    }

    private async Task AskAsync(HttpContext context, Func<string, IFormCollection, OperatorRequest?> request)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        if (request(Visitor.Of(context).Name, form) is not { } asked)
        {
            await Answer.SayAsync(context, StatusCodes.Status400BadRequest, "An alarm is shelved for 1 to 24 hours; go back and choose.")
                .ConfigureAwait(false);
            return;
        }

        await (rack.TryAsk(asked) ? Answer.SeeOther(context, "/alarms") : ActRoutes.Busy(context)).ConfigureAwait(false);
    }

    private static Shelve? Shelving(string by, IFormCollection form) =>
        int.TryParse(form["hours"], out var hours) && hoursToShelve.Contains(hours)
            ? new Shelve(by, form["alarm"].ToString(), Duration.FromHours(hours))
            : null;

    private FrameView Frame(string title) => new(rack.Site.Name, title, "Alarms", IsLive: false);
}
