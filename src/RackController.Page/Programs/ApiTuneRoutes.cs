using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;
using RackController.Bench;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Fits for programs, as on the page, with whose fit it is one.</summary>
internal sealed class ApiTuneRoutes(IServedRack rack, TuneDesk desk, Past past)
{
    private const double MostSeconds = 4 * 3600;

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/tune/floods", FloodsAsync).For(Role.View);
        routes.MapGet("/api/tune", ShowAsync).For(Role.View);
        routes.MapPost("/api/tune", FitAsync).For(Role.Operate);
        routes.MapPost("/api/tune/draft", DraftAsync).For(Role.Configure);
    }

    private async Task FloodsAsync(HttpContext context)
    {
        var query = context.Request.Query;
        await OrSaidAsync(context, async () =>
        {
            var asked = TuneAsked.Of(desk.Read().Site, query["rack"].ToString(), query["since"].ToString());
            if (asked.Complaint is { } complaint)
            {
                await ApiAnswers.SayAsync(context, StatusCodes.Status422UnprocessableEntity, complaint).ConfigureAwait(false);
                return;
            }

            var floods = await OnRecordAsync(context, asked).ConfigureAwait(false);
            await ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, new JsonArray([.. floods.Reverse().Select(Told)]))
                .ConfigureAwait(false);
        }).ConfigureAwait(false);
    }

    private static JsonObject Told(TimedFlood flood) => new()
    {
        ["at"] = ApiStatusOf.Time(flood.At!.Value),
        ["valvesShut"] = new JsonArray([.. flood.Run.Resting.Numbers]),
        ["tiers"] = new JsonArray([.. flood.Times.Select(time => Told(time.Mark, time.AfterS))]),
    };

    private static JsonObject Told(FloodMark mark, double afterS) => new()
    {
        ["tier"] = mark.TierNumber,
        ["what"] = What(mark),
        ["toMm"] = mark.DepthMm,
        ["seconds"] = afterS,
    };

    private Task<ImmutableArray<TimedFlood>> OnRecordAsync(HttpContext context, TuneAsked asked) => past.ReadAsync(
        journal => new FloodTimings(desk.Read().Site, asked.Rack).Newest(journal, asked.From(rack.Site.Zone)), context.RequestAborted);

    private async Task FitAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiJson.Default.ApiTuneAsked).ConfigureAwait(false) is not { } sent)
        {
            return;
        }

        var now = (await rack.LookAsync(context).ConfigureAwait(false)).At.Wall;
        await OrSaidAsync(context, async () =>
        {
            var file = desk.Read();
            var asked = TuneAsked.Of(file.Site, sent.Rack ?? "", sent.Since ?? "");
            var (fills, drains) = (sent.Fills ?? [], sent.Drains ?? []);
            var isByHand = fills.Length + drains.Length > 0;
            var floods = isByHand || asked.Complaint is not null ? [] : await OnRecordAsync(context, asked).ConfigureAwait(false);
            var wrong = asked.Complaint
                ?? (isByHand && sent.Since is not null ? "`since` chooses among floods on record: leave out `since`, or the times" : null)
                ?? fills.Concat(drains).Select(WrongWith).FirstOrDefault(each => each is not null) ?? Twice(fills) ?? Twice(drains)
                ?? (isByHand || !floods.IsEmpty ? null : $"no flood of {asked.Rack.Name} is on record with times: send them by hand");
            if (wrong is not null)
            {
                await ApiAnswers.SayAsync(context, StatusCodes.Status422UnprocessableEntity, wrong).ConfigureAwait(false);
                return;
            }

            var fit = desk.Begin(
                file, asked.Rack,
                isByHand ? TuneTimes.ByHand(asked.Rack, Times(fills), Times(drains), now.InZone(file.Site.Zone).Date)
                    : TuneTimes.OnRecord(floods, file.Site.Zone),
                now);
            await ApiAnswers.WriteAsync(context, StatusCodes.Status202Accepted, Told(fit)).ConfigureAwait(false);
        }).ConfigureAwait(false);
    }

    private static ImmutableArray<HandTimes> Times(ApiHandTimes[] sent) =>
        [.. sent.Select(one => new HandTimes(one.Tier, [.. one.Seconds!]))];

    // A tier that the rack has not is refused with the fit.
    private static string? WrongWith(ApiHandTimes? sent) => sent?.Tier is not (>= 1 and <= 99) ? "`tier` is 1 for the bottom tier"
        : sent.Seconds is not { Length: > 0 } seconds || seconds.Any(one => one is not (> 0 and <= MostSeconds))
            ? "`seconds` are times above 0 and up to 4 h, flood by flood"
        : null;

    private static string? Twice(ApiHandTimes[] sent) =>
        sent.GroupBy(one => one.Tier).FirstOrDefault(tier => tier.Count() > 1) is { } twice
            ? $"tier {twice.Key} stands there twice: send all its times together"
            : null;

    private Task ShowAsync(HttpContext context) => desk.Fit is { } fit
        ? ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, Told(fit))
        : ApiAnswers.SayAsync(context, StatusCodes.Status404NotFound, "no rack was fitted yet");

    private static JsonObject Told(TuneFit fit)
    {
        var outcome = fit.Outcome;
        var measured = outcome?.Tuned?.Rack.Measured;
        return new JsonObject
        {
            ["fit"] = fit.Number,
            ["rack"] = fit.Rack.Name,
            ["isUnderWay"] = fit.IsUnderWay,
            ["refused"] = outcome?.Refusal ?? fit.Fault,
            ["floods"] = measured?.Floods ?? 0,
            ["on"] = measured is null ? null : LocalDatePattern.Iso.Format(measured.On),
            ["times"] = new JsonArray([.. (outcome?.Tuned?.Times ?? []).Select(Told)]),
            ["figures"] = new JsonArray([.. (outcome?.Tuned?.Figures ?? []).Select(one => Told(one.Figure, one.Value))]),
            ["leftOut"] = new JsonArray([.. outcome?.Tuned?.LeftOut ?? []]),
            ["untold"] = new JsonArray([.. outcome?.Tuned?.Untold ?? []]),
            ["offPercent"] = outcome?.Tuned?.OffPercent,
        };
    }

    private static JsonObject Told(TunedTime time) => new()
    {
        ["tier"] = time.Mark.TierNumber,
        ["what"] = What(time.Mark),
        ["toMm"] = time.Mark.DepthMm,
        ["valvesShut"] = new JsonArray([.. time.Resting.Numbers]),
        ["count"] = time.Count,
        ["meanS"] = time.MeasuredS,
        ["withoutMeasuredS"] = time.BeforeS,
        ["byFitS"] = time.AfterS,
    };

    private static JsonObject Told(TunedFigure figure, MeasuredFigure fitted) => new()
    {
        ["of"] = KeyOf(figure.Part),
        ["tier"] = figure.Tier,
        ["value"] = fitted.Value,
        ["within"] = fitted.Within,
    };

    private static string What(FloodMark mark) => mark.Passing == FloodPassing.Rising ? "fills" : "drains";

    private static string KeyOf(TunedPart part) => part switch
    {
        TunedPart.Pump => "pump-speed",
        TunedPart.Screen => "screen",
        TunedPart.Standpipe => "standpipe",
        TunedPart.Weep => "weep",
        TunedPart.Branch => "branch",
        _ => throw new InvariantBrokenException($"every part has its key, {part} too"),
    };

    private async Task DraftAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiJson.Default.ApiTuneDraft).ConfigureAwait(false) is not { } sent)
        {
            return;
        }

        var status = await rack.LookAsync(context).ConfigureAwait(false);
        await OrSaidAsync(context, () => desk.Draft(sent.Fit ?? 0, status) is { } refused
            ? ApiAnswers.SayAsync(context, StatusCodes.Status409Conflict, refused)
            : ApiAnswers.SayAsync(context, StatusCodes.Status202Accepted, "a draft was begun; /api/rack-file/draft tells how it fares"))
            .ConfigureAwait(false);
    }

    private static async Task OrSaidAsync(HttpContext context, Func<Task> act)
    {
        try
        {
            await act().ConfigureAwait(false);
        }
        catch (Exception e) when (e is CouldNotRunException or IOException or UnauthorizedAccessException && !context.Response.HasStarted)
        {
            await ApiAnswers.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
        }
    }
}
