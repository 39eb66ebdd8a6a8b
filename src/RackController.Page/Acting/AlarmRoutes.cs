using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Control;
using RackController.Service;

namespace RackController.Page;

/// <summary>What can be done with an alarm.</summary>
internal static class AlarmRoutes
{
    /// <summary>Puts it on the map.</summary>
    public static void Map(IEndpointRouteBuilder routes, IServedRack rack)
    {
        routes.MapGet("/alarms/reset", context => ShowAsync(context, rack, FirstPage)).For(Role.Operate);
        routes.MapPost("/alarms/reset", context => AskAsync(context, rack, (by, key) => new ResetLatch(by, key), ConfirmAddress))
            .For(Role.Operate);
        routes.MapGet("/alarms/confirm-reset", context => ShowAsync(context, rack, SecondPage)).For(Role.Operate);
        routes.MapPost("/alarms/confirm-reset", context => AskAsync(context, rack, (by, key) => new ConfirmReset(by, key), _ => "/"))
            .For(Role.Operate);
        routes.MapPost("/alarms/acknowledge", context => AskAsync(
                context, rack, (by, key) => new Acknowledge(by, key), _ => context.Request.Query["back"] == "alarms" ? "/alarms" : "/"))
            .For(Role.Operate);
    }

    private static string ConfirmAddress(string key) => $"/alarms/confirm-reset?alarm={Uri.EscapeDataString(key)}";

    private static ConfirmPage FirstPage(FrameView frame, Alarm alarm) => new(
        frame, $"Reset {alarm.Key}",
        [$"It latched because {alarm.Cause}.", $"Look at the rack first. {alarm.Action}.", "A second press releases it."],
        "I have looked", "/alarms/reset", [new HiddenField("alarm", alarm.Key)]);

    private static ConfirmPage SecondPage(FrameView frame, Alarm alarm) => new(
        frame, $"Release {alarm.Key}?",
        ["What it held may start again.", "If its cause is still there, it stays latched."],
        "Release it", "/alarms/confirm-reset", [new HiddenField("alarm", alarm.Key)]);

    private static async Task ShowAsync(HttpContext context, IServedRack rack, Func<FrameView, Alarm, ConfirmPage> page)
    {
        var key = context.Request.Query["alarm"].ToString();
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        if (status.Alarms.FirstOrDefault(alarm => alarm.Key == key) is not { State: AlarmState.Latched } alarm)
        {
            await Answer.SeeOther(context, "/").ConfigureAwait(false);
            return;
        }

        var frame = new FrameView(rack.Site.Name, "Reset a latch", "Now", IsLive: false);
        await Answer.WithAsync(context, Slices.Confirm.Create(page(frame, alarm))).ConfigureAwait(false);
    }

    private static async Task AskAsync(
        HttpContext context, IServedRack rack, Func<string, string, OperatorRequest> request, Func<string, string> next)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        var key = form["alarm"].ToString();
        var isAsked = rack.TryAsk(request(Visitor.Of(context).Name, key));
        await (isAsked ? Answer.SeeOther(context, next(key)) : ActRoutes.Busy(context)).ConfigureAwait(false);
    }
}
