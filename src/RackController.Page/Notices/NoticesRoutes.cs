using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Service;

namespace RackController.Page;

/// <summary>Who is told of alarms, whether that works, and a button to try it.</summary>
internal sealed class NoticesRoutes(IServedRack rack, NoticesView view)
{
    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/notices", ShowAsync).For(Role.View);
        routes.MapPost("/notices/test", TestAsync).For(Role.Operate);
        routes.MapGet("/api/notices", WriteAsync).For(Role.View);
        routes.MapPost("/api/notices/test", AnswerTestAsync).For(Role.Operate);
    }

    private Task ShowAsync(HttpContext context) => Answer.WithAsync(context, Slices.Notices.Create(view.Page(
        new FrameView(rack.Site.Name, "Notices", "Alarms", IsLive: false), Visitor.Of(context).May(Role.Operate),
        context.Request.Query["test"] == "asked")));

    private Task TestAsync(HttpContext context)
    {
        AskForTest(context);
        return Answer.SeeOther(context, "/notices?test=asked");
    }

    private Task WriteAsync(HttpContext context)
    {
        var status = view.Status;
        return ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, new JsonObject
        {
            ["isAsked"] = rack.Site.Notices is not null,
            ["isRunning"] = view.IsRunning,
            ["trouble"] = status?.Trouble,
            ["ways"] = new JsonArray([.. (status?.Ways ?? []).Select(Told)]),
        });
    }

    private static JsonObject Told(WayStatus way) => new()
    {
        ["name"] = way.Name,
        ["lastSuccess"] = ApiStatusOf.Time(way.LastSuccess),
        ["fault"] = way.Fault,
        ["faultAt"] = ApiStatusOf.Time(way.FaultAt),
        ["waiting"] = way.Waiting,
    };

    private Task AnswerTestAsync(HttpContext context)
    {
        if (rack.Site.Notices is null || !view.IsRunning)
        {
            return ApiAnswers.SayAsync(
                context, StatusCodes.Status409Conflict,
                rack.Site.Notices is null
                    ? "the rack file asks for no notices: write `notices`"
                    : "no process sends notices now: start it");
        }

        AskForTest(context);
        return ApiAnswers.SayAsync(context, StatusCodes.Status202Accepted, "asked; /api/notices tells what became of it");
    }

    // By way of the journal: the process that sends has no other ear, and needs none.
    private void AskForTest(HttpContext context) => rack.Record(NoticesStatus.TestAsked, $"{Visitor.Of(context).Name} asked");
}
