using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>The flood log: every flood of every rack, and what changed since the month before.</summary>
internal sealed class FloodRoutes(IServedRack rack, Past past)
{
    /// <summary>Enough for ten floods, one a day, and the thirty days before them.</summary>
    private static readonly Duration shown = Duration.FromDays(45);

    private static readonly Duration inFile = Duration.FromDays(90);

    /// <summary>Puts it on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/floods", ShowAsync).For(Role.View);
        routes.MapGet("/floods.csv", FileAsync).For(Role.View);
    }

    private async Task ShowAsync(HttpContext context)
    {
        ImmutableArray<RackFloods> found = [];
        string? fault = null;
        try
        {
            found = [.. (await ReadAsync(context, shown).ConfigureAwait(false)).Select(each => View(each.Rack, each.Floods))];
        }
        catch (CouldNotRunException e)
        {
            fault = e.Message;
        }

        var frame = new FrameView(rack.Site.Name, "Floods", "Floods", IsLive: false);
        await Answer.WithAsync(context, Slices.Floods.Create(new FloodsPage(frame, fault, found))).ConfigureAwait(false);
    }

    private async Task FileAsync(HttpContext context)
    {
        try
        {
            await Csv.WriteAsync(context, "floods.csv", Rows(await ReadAsync(context, inFile).ConfigureAwait(false))).ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
        }
    }

    private async Task<ImmutableArray<(Rack Rack, ImmutableArray<FloodRecord> Floods)>> ReadAsync(HttpContext context, Duration length)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var span = new HistorySpan(status.At.Wall - length, status.At.Wall + Duration.Epsilon);
        var unwritten = rack.UnwrittenSamples();
        return await past.ReadAsync<ImmutableArray<(Rack, ImmutableArray<FloodRecord>)>>(
            journal => [.. rack.Site.Racks.Select(each => (each, new FloodLog(rack.Site, each).Read(journal, span, unwritten)))],
            context.RequestAborted).ConfigureAwait(false);
    }

    private RackFloods View(Rack of, ImmutableArray<FloodRecord> floods)
    {
        var (tiers, units) = (TiersOf(floods), rack.Site.Units.Of("L"));
        return new RackFloods(
            of.Id.Index, of.Name,
            [.. FitDrift.In(rack.Site, of, floods).Concat(FloodDrift.In(floods)).Select(drift => DriftWords.Of(drift, rack.Site.Units))],
            [.. new FloodLog(rack.Site, of).Lacking()],
            ["Fill", "Soak", "Water", .. tiers.SelectMany(tier => (string[])[$"Tier {tier} full after", $"Tier {tier} empty after"])],
            [
                .. floods.Reverse().Select(flood => new FloodView(
                    PageWords.Date(flood.At, rack.Site.Zone), flood.Why, AtRest(flood), flood.CutShort,
                    [
                        Words(flood.Fill), Words(flood.Soak), flood.VolumeL is { } litres ? units.Words(litres, 0) : "",
                        .. tiers.Select(tier => flood.Tiers.FirstOrDefault(each => each.Number == tier))
                            .SelectMany(tier => (string[])[Words(tier?.FullAfter), Words(tier?.EmptyAfter)]),
                    ])),
            ]);
    }

    private IEnumerable<IEnumerable<string>> Rows(ImmutableArray<(Rack Rack, ImmutableArray<FloodRecord> Floods)> all)
    {
        var tiers = TiersOf(all.SelectMany(each => each.Floods));
        yield return
        [
            "time", "rack", "because", "fill (s)", "soak (s)", "water (L)",
            .. tiers.SelectMany(tier => (string[])[$"tier {tier} full after (s)", $"tier {tier} empty after (s)"]),
            "valves shut", "cut short",
        ];
        foreach (var (of, flood) in all.SelectMany(each => each.Floods.Select(flood => (each.Rack, flood))).OrderBy(each => each.flood.At))
        {
            yield return
            [
                Csv.Time(flood.At, rack.Site.Zone), of.Name, flood.Why, Csv.Number(flood.Fill?.TotalSeconds),
                Csv.Number(flood.Soak?.TotalSeconds), Csv.Number(flood.VolumeL),
                .. tiers.Select(tier => flood.Tiers.FirstOrDefault(each => each.Number == tier))
                    .SelectMany(tier => (string[])[Csv.Number(tier?.FullAfter?.TotalSeconds), Csv.Number(tier?.EmptyAfter?.TotalSeconds)]),
                flood.Resting is { } resting ? string.Join(' ', resting.Numbers) : "unknown", flood.CutShort ?? "",
            ];
        }
    }

    private static ImmutableArray<int> TiersOf(IEnumerable<FloodRecord> floods) =>
        [.. floods.SelectMany(flood => flood.Tiers.Select(tier => tier.Number)).Distinct().Order()];

    private static string? AtRest(FloodRecord flood) => flood.Resting is not { } resting ? "a valve was switched while the pump ran"
        : resting.IsEmpty ? null
        : $"valves shut: {string.Join(", ", resting.Numbers.Select(tier => $"tier {tier}"))}";

    private static string Words(Duration? length) => length is not { } known ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{(long)known.TotalMinutes}:{known.Seconds:00} min");
}
