using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Page;

/// <summary>The rack file for programs: read, drafted, judged, tried and put in place, as on the page of the schedule, with whose draft it
/// is one.</summary>
internal sealed class ApiRackFileRoutes(IServedRack rack, ScheduleDesk desk)
{
    /// <summary>Puts it on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/rack-file", ShowAsync).For(Role.View);
        routes.MapGet("/api/rack-file/draft", ShowDraftAsync).For(Role.Configure);
        routes.MapPost("/api/rack-file/draft", DraftAsync).For(Role.Configure);
        routes.MapPost("/api/rack-file/apply", ApplyAsync).For(Role.Configure);
        routes.MapPost("/api/rack-file/discard", DiscardAsync).For(Role.Configure);
    }

    private Task ShowAsync(HttpContext context) => OrSaidAsync(context, () => ApiAnswers.WriteAsync(
        context, StatusCodes.Status200OK, new JsonObject
        {
            ["name"] = desk.Shelf.Name,
            ["text"] = desk.Shelf.Read(),
            ["versions"] = new JsonArray([.. desk.Shelf.Versions().Select(version => ApiStatusOf.Time(version.Until))]),
        }));

    private async Task DraftAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiJson.Default.ApiDraftText).ConfigureAwait(false) is not { } sent)
        {
            return;
        }

        if (sent.Text is not { } text)
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status422UnprocessableEntity, "`text` is missing: send a whole rack file")
                .ConfigureAwait(false);
            return;
        }

        var status = await rack.LookAsync(context).ConfigureAwait(false);
        await OrSaidAsync(context, () =>
        {
            desk.Begin(text, status);
            return ShowDraftAsync(context);
        }).ConfigureAwait(false);
    }

    private Task ShowDraftAsync(HttpContext context) => desk.Draft is { } draft
        ? ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, Told(draft))
        : ApiAnswers.SayAsync(context, StatusCodes.Status404NotFound, "there is no draft");

    private static JsonObject Told(Draft draft) => new()
    {
        ["text"] = draft.Text,
        ["canRun"] = draft.Site is not null,
        ["complaints"] = new JsonArray([.. draft.Complaints.Select(Told)]),
        ["triedPercent"] = (int)(draft.Progress * 100),
        ["trialFault"] = draft.TrialFault,
        ["figures"] = new JsonArray(
            draft.Trial is { } trial ? [.. TrialTable.Rows(trial, ShownUnits.Metric).Select(Told)] : []),
        ["hazards"] = new JsonArray(
            draft.Trial is { } tried ? [.. tried.AsDrafted.Hazards.Select(hazard => hazard.Seen)] : []),
    };

    private static JsonObject Told(Complaint complaint) => new()
    {
        ["line"] = complaint.Line,
        ["column"] = complaint.Column,
        ["weight"] = complaint.Severity == Severity.Warning ? "warning" : "error",
        ["what"] = $"{complaint.What}: {complaint.WhatToDo}",
    };

    private static JsonObject Told(TrialRow row) => new()
    {
        ["of"] = row.Subject,
        ["what"] = row.What,
        ["asItIs"] = row.AsItIs,
        ["asDrafted"] = row.AsDrafted,
    };

    private async Task ApplyAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var by = Visitor.Of(context).Name;
        await OrSaidAsync(context, async () =>
        {
            if (desk.Apply(by, status) is { } refused)
            {
                await ApiAnswers.SayAsync(context, StatusCodes.Status409Conflict, refused).ConfigureAwait(false);
                return;
            }

            await ApiAnswers.SayAsync(context, StatusCodes.Status202Accepted, "in place; the controller starts again with it")
                .ConfigureAwait(false);
            await context.Response.CompleteAsync().ConfigureAwait(false);
            desk.StartAgain(by);
        }).ConfigureAwait(false);
    }

    private Task DiscardAsync(HttpContext context)
    {
        desk.Discard();
        return ApiAnswers.SayAsync(context, StatusCodes.Status200OK, "thrown away");
    }

    private static async Task OrSaidAsync(HttpContext context, Func<Task> answer)
    {
        try
        {
            await answer().ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException && !context.Response.HasStarted)
        {
            await ApiAnswers.SayAsync(
                context, StatusCodes.Status500InternalServerError,
                $"the rack file cannot be read or written, and stays as it is: {e.Message}")
                .ConfigureAwait(false);
        }
    }
}
