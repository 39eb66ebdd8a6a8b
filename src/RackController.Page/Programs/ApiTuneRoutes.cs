using System.Collections.Immutable;
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

            await ApiAnswers.WriteAsync(
                context, StatusCodes.Status200OK, [.. (await OnRecordAsync(context, asked).ConfigureAwait(false)).Reverse().Select(Told)],
                ApiTuneJson.Default.ImmutableArrayApiTimedFlood).ConfigureAwait(false);
        }).ConfigureAwait(false);
    }

    private static ApiTimedFlood Told(TimedFlood flood) => new(
        ApiStatusOf.Time(flood.At!.Value), [.. flood.Run.Resting.Numbers],
        [.. flood.Times.Select(time => new ApiTimedTier(time.Mark.TierNumber, What(time.Mark), time.Mark.DepthMm, time.AfterS))]);

    private Task<ImmutableArray<TimedFlood>> OnRecordAsync(HttpContext context, TuneAsked asked) => past.ReadAsync(
        journal => new FloodTimings(desk.Read().Site, asked.Rack).Newest(journal, asked.From(rack.Site.Zone)), context.RequestAborted);

    private async Task FitAsync(HttpContext context)
    {
        if (await ApiAnswers.ReadAsync(context, ApiTuneJson.Default.ApiTuneAsked).ConfigureAwait(false) is not { } sent)
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
            await ApiAnswers.WriteAsync(context, StatusCodes.Status202Accepted, Told(fit), ApiTuneJson.Default.ApiTune)
                .ConfigureAwait(false);
        }).ConfigureAwait(false);
    }

    private static ImmutableArray<HandTimes> Times(ImmutableArray<ApiHandTimes> sent) =>
        [.. sent.Select(one => new HandTimes(one.Tier, one.Seconds!.Value))];

    // A tier that the rack has not is refused with the fit.
    private static string? WrongWith(ApiHandTimes? sent) => sent?.Tier is not (>= 1 and <= 99) ? "`tier` is 1 for the bottom tier"
        : sent.Seconds is not { Length: > 0 } seconds || seconds.Any(one => one is not (> 0 and <= MostSeconds))
            ? "`seconds` are times above 0 and up to 4 h, flood by flood"
        : null;

    private static string? Twice(ImmutableArray<ApiHandTimes> sent) =>
        sent.GroupBy(one => one.Tier).FirstOrDefault(tier => tier.Count() > 1) is { } twice
            ? $"tier {twice.Key} stands there twice: send all its times together"
            : null;

    private Task ShowAsync(HttpContext context) => desk.Fit is { } fit
        ? ApiAnswers.WriteAsync(context, StatusCodes.Status200OK, Told(fit), ApiTuneJson.Default.ApiTune)
        : ApiAnswers.SayAsync(context, StatusCodes.Status404NotFound, "no rack was fitted yet");

    private static ApiTune Told(TuneFit fit)
    {
        var outcome = fit.Outcome;
        var measured = outcome?.Tuned?.Rack.Measured;
        return new ApiTune(
            fit.Number, fit.Rack.Name, fit.IsUnderWay, outcome?.Refusal ?? fit.Fault, measured?.Floods ?? 0,
            measured is null ? null : LocalDatePattern.Iso.Format(measured.On),
            [.. (outcome?.Tuned?.Times ?? []).Select(Told)],
            [.. (outcome?.Tuned?.Figures ?? []).Select(one => new ApiTunedFigure(
                KeyOf(one.Figure.Part), one.Figure.Tier, one.Value.Value, one.Value.Within))],
            outcome?.Tuned?.LeftOut ?? [], outcome?.Tuned?.Untold ?? [], outcome?.Tuned?.OffPercent);
    }

    private static ApiTunedTime Told(TunedTime time) => new(
        time.Mark.TierNumber, What(time.Mark), time.Mark.DepthMm, [.. time.Resting.Numbers], time.Count, time.MeasuredS, time.BeforeS,
        time.AfterS);

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
        if (await ApiAnswers.ReadAsync(context, ApiTuneJson.Default.ApiTuneDraft).ConfigureAwait(false) is not { } sent)
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
