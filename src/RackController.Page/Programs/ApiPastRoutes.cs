using System.Collections.Immutable;
using System.Globalization;
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
        await ApiAnswers.ToldAsync(context, ApiPastJson.Default.ApiHistory, async () => Told(
            asked,
            await past.ReadAsync(journal => PastOfRack.Read(journal, rack.Site, asked, unwritten), context.RequestAborted)
                .ConfigureAwait(false))).ConfigureAwait(false);
    }

    private static ApiHistory Told(HistoryAsked asked, PastOfRack found) => new(
        asked.Rack.Name, Time(asked.Span.From), Time(asked.Span.Until),
        asked.Complaint
            ?? (asked.IsByDay && found.Trends.IsEmpty ? "No day of it is summed up yet: that is done once a day is over." : null),
        [
            .. found.Trends.SelectMany(chart => chart.Trends.Select(trend => new ApiTrend(
                chart.Kind.Key, trend.Sensor, chart.Kind.Unit,
                [.. trend.Points.Select(at => new ApiPoint(Time(at.At), at.Least, at.Mean, at.Most, at.IsAfterGap))]))),
        ],
        [.. found.Loads.Select(load => new ApiLoadTimes(
            load.Load, [.. load.On.Select(on => new ApiSpan(Time(on.From), Time(on.Until)))]))],
        [.. found.Marks.Select(mark => new ApiMark(Time(mark.At), mark.IsAlarm, mark.Words))]);

    private async Task FloodsAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var span = new HistorySpan(status.At.Wall - floodsGoBack, status.At.Wall + Duration.Epsilon);
        var unwritten = rack.UnwrittenSamples();
        await ApiAnswers.ToldAsync(context, ApiPastJson.Default.ImmutableArrayApiFlood, () => past.ReadAsync<ImmutableArray<ApiFlood>>(
            journal =>
            [
                .. rack.Site.Racks.SelectMany(of => new FloodLog(rack.Site, of).Read(journal, span, unwritten).Select(flood => (of, flood)))
                    .OrderByDescending(each => each.flood.At).Select(each => Flood(each.of, each.flood)),
            ],
            context.RequestAborted)).ConfigureAwait(false);
    }

    private static ApiFlood Flood(Rack of, FloodRecord flood) => new(
        Time(flood.At), of.Name, flood.Why, flood.Fill?.TotalSeconds, flood.Soak?.TotalSeconds, flood.VolumeL, flood.CutShort,
        flood.Resting is { } resting ? [.. resting.Numbers] : null,
        [.. flood.Tiers.Select(tier => new ApiTierFlood(tier.Number, tier.FullAfter?.TotalSeconds, tier.EmptyAfter?.TotalSeconds))]);

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
        return ApiAnswers.ToldAsync(context, ApiPastJson.Default.ApiEventPage, async () =>
        {
            var found = await past.ReadAsync(journal => journal.EventPage(filter, before, most), context.RequestAborted)
                .ConfigureAwait(false);
            return new ApiEventPage(
                [.. found.Select(kept => ApiStatusOf.Event(kept.Event))], found.Length == most ? found[^1].Number : null);
        });
    }

    private async Task AlarmsAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var view = new AlarmDeskView(rack.Site, book);
        await ApiAnswers.ToldAsync(context, ApiPastJson.Default.ApiAlarms, async () =>
        {
            var found = await past.ReadAsync(
                journal => PastAlarms.Read(journal, view.Span(status.At.Wall, journal.Begins())), context.RequestAborted)
                .ConfigureAwait(false);
            var counted = AlarmStatistics.Of([.. found.OfDays.Reverse()], found.Days, rack.Site.Zone, book.PriorityOf);
            return new ApiAlarms(
                [.. book.OfSite.Select(known => Known(known.Key, known.Text.Priority, status))], counted.PerDay.Length, counted.Count,
                counted.MostInTenMinutes, counted.Floods, [.. counted.MostFrequent.Select(Count)], [.. counted.Chattering.Select(Count)],
                [.. counted.Standing.Select(standing => standing.Key)]);
        }).ConfigureAwait(false);
    }

    private static ApiKnownAlarm Known(string key, AlarmPriority priority, SiteStatus status) => new(
        key, priority.InWords(), (status.Alarms.FirstOrDefault(alarm => alarm.Key == key)?.State ?? AlarmState.Normal).InWords());

    private static ApiAlarmCount Count(AlarmCount of) => new(of.Key, of.Count);

    private static string Time(Instant at) => ApiStatusOf.Time(at);
}
