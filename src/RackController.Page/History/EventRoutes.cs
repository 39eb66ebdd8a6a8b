using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Control;
using RackController.Service;

namespace RackController.Page;

/// <summary>Everything that happened, page by page, and as a file.</summary>
internal sealed class EventRoutes(IServedRack rack, Past past)
{
    private const int PerPage = 100;
    private const int MostInFile = 20_000;

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/events", ShowAsync).For(Role.View);
        routes.MapGet("/events.csv", FileAsync).For(Role.View);
    }

    private async Task ShowAsync(HttpContext context)
    {
        var filter = FilterOf(context.Request.Query);
        long? before = long.TryParse(context.Request.Query["before"], CultureInfo.InvariantCulture, out var number) ? number : null;
        ImmutableArray<KeptEvent> found = [];
        string? fault = null;
        try
        {
            found = await past.ReadAsync(journal => journal.EventPage(filter, before, PerPage), context.RequestAborted)
                .ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            fault = e.Message;
        }

        var query = $"kind={filter.Kind}&of={Uri.EscapeDataString(filter.Subject ?? "")}";
        var site = rack.Site;
        var page = new EventsPage(
            new FrameView(site.Name, "Events", "History", IsLive: false), fault,
            [.. Enum.GetValues<EventKind>().Select(kind => new Place(Words(kind), kind.ToString()))],
            [.. site.Racks.Select(each => each.Name), .. site.Circuits.Select(each => each.Name), "controller"],
            filter.Kind?.ToString() ?? "", filter.Subject ?? "",
            [.. found.Select(kept => new DueView(
                kept.Event.At.Wall.InZone(site.Zone).ToString("ddd d MMM HH:mm:ss", CultureInfo.InvariantCulture),
                kept.Event.Subject, kept.Event.What, kept.Event.Because))],
            found.Length == PerPage ? $"/events?{query}&before={found[^1].Number}" : null, query);
        await Answer.WithAsync(context, Slices.Events.Create(page)).ConfigureAwait(false);
    }

    private async Task FileAsync(HttpContext context)
    {
        var filter = FilterOf(context.Request.Query);
        try
        {
            var found = await past.ReadAsync(journal => journal.EventPage(filter, null, MostInFile), context.RequestAborted)
                .ConfigureAwait(false);
            await Csv.WriteAsync(context, "events.csv", Rows(found)).ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
        }
    }

    private IEnumerable<IEnumerable<string>> Rows(ImmutableArray<KeptEvent> events)
    {
        yield return ["time", "is the clock trusted", "kind", "subject", "what", "because"];
        foreach (var (_, _, happened) in events)
        {
            yield return
            [
                Csv.Time(happened.At.Wall, rack.Site.Zone), happened.At.WallTrusted ? "yes" : "no", Words(happened.Kind), happened.Subject,
                happened.What, happened.Because,
            ];
        }
    }

    /// <summary>What of it is asked for.</summary>
    public static EventFilter FilterOf(IQueryCollection query) => new(
        Enum.TryParse<EventKind>(query["kind"], out var kind) && Enum.IsDefined(kind) ? kind : null,
        query["of"].ToString() is { Length: > 0 } subject ? subject : null);

    private static string Words(EventKind kind) => kind == EventKind.ProofTest ? "proof test" : kind.ToString().ToLowerInvariant();
}
