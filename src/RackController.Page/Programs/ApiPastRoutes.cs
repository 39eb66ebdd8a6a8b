using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What the journal tells, for programs: the same as the pages of history, floods, events and alarms.</summary>
internal sealed class ApiPastRoutes(IServedRack rack, Past past)
{
    private const int MostEvents = 1000;
    private const int UsualEvents = 100;
    private static readonly Duration floodsGoBack = Duration.FromDays(90);

    private readonly AlarmBook book = new(rack.Site);

    /// <summary>Puts it on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/history", HistoryAsync).For(Role.View);
        routes.MapGet("/api/floods", FloodsAsync).For(Role.View);
        routes.MapGet("/api/past-events", EventsAsync).For(Role.View);
        routes.MapGet("/api/alarms", AlarmsAsync).For(Role.View);
    }

    private async Task HistoryAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var asked = HistoryAsked.Of(context.Request.Query, rack.Site, status.At.Wall);
        var unwritten = rack.UnwrittenSamples();
        await ApiAnswers.ToldAsync(
            context,
            () => past.ReadAsync(journal => PastOfRack.Read(journal, rack.Site, asked, unwritten), context.RequestAborted),
            (json, found) => ApiHistory.Write(json, asked, found)).ConfigureAwait(false);
    }

    private async Task FloodsAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var span = new HistorySpan(status.At.Wall - floodsGoBack, status.At.Wall + Duration.Epsilon);
        var unwritten = rack.UnwrittenSamples();
        await ApiAnswers.ToldAsync(context, () => past.ReadAsync<JsonNode>(
            journal => new JsonArray(
            [
                .. rack.Site.Racks.SelectMany(of => new FloodLog(rack.Site, of).Read(journal, span, unwritten).Select(flood => (of, flood)))
                    .OrderByDescending(each => each.flood.At).Select(each => Flood(each.of, each.flood)),
            ]),
            context.RequestAborted)).ConfigureAwait(false);
    }

    private static JsonObject Flood(Rack of, FloodRecord flood) => new()
    {
        ["at"] = Time(flood.At),
        ["rack"] = of.Name,
        ["because"] = flood.Why,
        ["fillS"] = flood.Fill?.TotalSeconds,
        ["soakS"] = flood.Soak?.TotalSeconds,
        ["waterL"] = flood.VolumeL,
        ["cutShort"] = flood.CutShort,
        ["valvesShut"] = flood.Resting is { } resting ? new JsonArray([.. resting.Numbers]) : null,
        ["tiers"] = new JsonArray([.. flood.Tiers.Select(Tier)]),
    };

    private static JsonObject Tier(TierFlood tier) => new()
    {
        ["tier"] = tier.Number,
        ["fullAfterS"] = tier.FullAfter?.TotalSeconds,
        ["emptyAfterS"] = tier.EmptyAfter?.TotalSeconds,
    };

    private Task EventsAsync(HttpContext context)
    {
        var query = context.Request.Query;
        var filter = EventRoutes.FilterOf(query);
        var isBefore = long.TryParse(query["before"], CultureInfo.InvariantCulture, out var number);
        var isMost = int.TryParse(query["most"], CultureInfo.InvariantCulture, out var asked) && asked is >= 1 and <= MostEvents;
        var wrong =
            query.ContainsKey("kind") && filter.Kind is null ? "`kind` is one of " + string.Join(", ", Enum.GetNames<EventKind>())
            : query.ContainsKey("before") && !isBefore ? "`before` is the number that the page before named"
            : query.ContainsKey("most") && !isMost ? $"`most` is 1 to {MostEvents}"
            : null;
        if (wrong is not null)
        {
            return ApiAnswers.SayAsync(context, StatusCodes.Status422UnprocessableEntity, wrong);
        }

        var (before, most) = (isBefore ? number : (long?)null, isMost ? asked : UsualEvents);
        return ApiAnswers.ToldAsync(context, async () =>
        {
            var found = await past.ReadAsync(journal => journal.EventPage(filter, before, most), context.RequestAborted)
                .ConfigureAwait(false);
            return new JsonObject
            {
                ["events"] = new JsonArray([.. found.Select(kept => ApiStatusOf.Event(kept.Event))]),
                ["before"] = found.Length == most ? found[^1].Number : null,
            };
        });
    }

    private async Task AlarmsAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var view = new AlarmDeskView(rack.Site, book);
        await ApiAnswers.ToldAsync(context, async () =>
        {
            var found = await past.ReadAsync(
                journal => PastAlarms.Read(journal, view.Span(status.At.Wall, journal.Begins())), context.RequestAborted)
                .ConfigureAwait(false);
            var counted = AlarmStatistics.Of([.. found.OfDays.Reverse()], found.Days, rack.Site.Zone, book.PriorityOf);
            return new JsonObject
            {
                ["known"] = new JsonArray([.. book.OfSite.Select(known => Known(known.Key, known.Text.Priority, status))]),
                ["days"] = counted.PerDay.Length,
                ["count"] = counted.Count,
                ["mostInTenMinutes"] = counted.MostInTenMinutes,
                ["floods"] = counted.Floods,
                ["mostFrequent"] = new JsonArray([.. counted.MostFrequent.Select(Count)]),
                ["chattering"] = new JsonArray([.. counted.Chattering.Select(Count)]),
                ["standing"] = new JsonArray([.. counted.Standing.Select(standing => standing.Key)]),
            };
        }).ConfigureAwait(false);
    }

    private static JsonObject Known(string key, AlarmPriority priority, SiteStatus status) => new()
    {
        ["key"] = key,
        ["priority"] = priority.InWords(),
        ["state"] = (status.Alarms.FirstOrDefault(alarm => alarm.Key == key)?.State ?? AlarmState.Normal).InWords(),
    };

    private static JsonObject Count(AlarmCount of) => new() { ["key"] = of.Key, ["count"] = of.Count };

    private static string Time(Instant at) => ApiStatusOf.Time(at);
}
