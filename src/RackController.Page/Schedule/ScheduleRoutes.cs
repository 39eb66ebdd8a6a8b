using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Service;

namespace RackController.Page;

/// <summary>The rack file in the page: written by hand, judged, tried on the simulated racks, put in place, and taken back.</summary>
internal sealed class ScheduleRoutes(IServedRack rack, ScheduleDesk desk)
{
    private const string Place = "Schedule";

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/schedule", ShowAsync).For(Role.View);
        routes.MapPost("/schedule/draft", DraftAsync).For(Role.Configure);
        routes.MapGet("/schedule/draft", ShowDraftAsync).For(Role.Configure);
        routes.MapPost("/schedule/apply", ApplyAsync).For(Role.Configure);
        routes.MapPost("/schedule/discard", DiscardAsync).For(Role.Configure);
    }

    private async Task ShowAsync(HttpContext context)
    {
        string? text = null, fault = null;
        try
        {
            var key = context.Request.Query["version"].ToString();
            var version = desk.Shelf.Versions().FirstOrDefault(kept => kept.Key == key);
            text = version is null ? desk.Shelf.Read()
                : await File.ReadAllTextAsync(version.Path, context.RequestAborted).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            fault = $"The rack file cannot be read: {e.Message}";
        }

        var versions = desk.Shelf.Versions().Select(kept => new VersionView(kept.Key, PageWords.Date(kept.Until, rack.Site.Zone)));
        var page = new SchedulePage(
            Frame("Schedule"), desk.Shelf.Name, text ?? "", fault, [.. versions], Visitor.Of(context).May(Role.Configure));
        await Answer.WithAsync(context, Slices.Schedule.Create(page)).ConfigureAwait(false);
    }

    private async Task DraftAsync(HttpContext context)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        desk.Begin(form["text"].ToString(), await rack.LookAsync(context).ConfigureAwait(false));
        await Answer.SeeOther(context, "/schedule/draft").ConfigureAwait(false);
    }

    private async Task ShowDraftAsync(HttpContext context)
    {
        if (desk.Draft is not { } current)
        {
            await Answer.SeeOther(context, "/schedule").ConfigureAwait(false);
            return;
        }

        var frame = Frame("Draft") with { Again = IsTrying(current) ? new Again(2, "/schedule/draft") : null };
        var page = new DraftPage(
            frame, desk.Shelf.Name, current.Text, current.Complaints, TextChanges.Between(current.Before, current.Text),
            current.Site is not null, (int)(current.Progress * 100), current.TrialFault,
            current.Trial is { } trial ? TrialTable.Rows(trial, rack.Site.Units) : [],
            current.Trial is { } tried ? [.. tried.AsDrafted.Hazards.Select(hazard => hazard.Seen)] : []);
        await Answer.WithAsync(context, Slices.Draft.Create(page)).ConfigureAwait(false);
    }

    private static bool IsTrying(Draft draft) => draft is { Site: not null, Trial: null, TrialFault: null };

    private async Task ApplyAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var by = Visitor.Of(context).Name;
        string? refused;
        try
        {
            refused = desk.Apply(by, status);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Answer.SayAsync(
                context, StatusCodes.Status500InternalServerError, $"The rack file stays as it was, it cannot be written: {e.Message}")
                .ConfigureAwait(false);
            return;
        }

        if (refused is not null)
        {
            await Answer.SayAsync(context, StatusCodes.Status409Conflict, refused).ConfigureAwait(false);
            return;
        }

        var page = new AppliedPage(Frame("Applied") with { Again = new Again(3, "/") });
        await Answer.WithAsync(context, Slices.Applied.Create(page)).ConfigureAwait(false);
        await context.Response.CompleteAsync().ConfigureAwait(false);
        desk.StartAgain(by);
    }

    private Task DiscardAsync(HttpContext context)
    {
        desk.Discard();
        return Answer.SeeOther(context, "/schedule");
    }

    private FrameView Frame(string title) => new(rack.Site.Name, title, Place, IsLive: false);
}
