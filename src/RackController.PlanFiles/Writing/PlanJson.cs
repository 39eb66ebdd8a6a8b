using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>A plan as JSON, for programs. Days are local dates, ISO 8601; units are in the names. The same plan gives the same
/// bytes.</summary>
public static class PlanJson
{
    /// <summary>Writes the JSON.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">What it takes.</param>
    public static string Of(Plan plan, Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(forecast);
        return JsonSerializer.Serialize(Document(plan, forecast), PlanJsonContext.Default.JsonPlan) + "\n";
    }

    private static JsonPlan Document(Plan plan, Forecast forecast)
    {
        var request = plan.Request;
        var tiers = request.Space.Tiers;
        return new JsonPlan(
            request.Site, request.Zone.Id, Iso(request.Today), Iso(request.Until),
            Quality(plan),
            [.. plan.Batches.Select(one => Batch(one, tiers))],
            [.. plan.Shortfalls.Select(one => new JsonShortfall(Order(one.Order), one.Reason, one.Remedy))],
            new JsonArray([.. plan.Remedy.Select(Room)]),
            new JsonArray([.. plan.Lamps.Select(lamp => Lamp(lamp, tiers))]),
            new JsonArray([.. PlanTasks.With(plan, forecast).Select(Task)]),
            ForecastJson.Of(forecast));
    }

    private static JsonObject Quality(Plan plan) => new()
    {
        ["deliveries"] = plan.Request.Orders.Length,
        ["notMet"] = plan.Shortfalls.Length,
        ["notMetIsProven"] = plan.Quality.AreShortfallsProven,
        ["litTierDays"] = plan.Quality.LitTierDays,
        ["leastLitTierDays"] = plan.Quality.LeastLitTierDays,
        ["gapPercent"] = Math.Round(plan.Quality.GapPercent, 2),
        ["traysMoved"] = plan.Quality.Moves,
    };

    private static JsonObject Room(ExtraRoom room) => new()
    {
        ["kind"] = room.IsDark ? "blackout-trays" : "tiers",
        ["count"] = room.Count,
        ["from"] = Iso(room.From),
        ["last"] = Iso(room.Last),
    };

    private static JsonObject Lamp(LampSetting lamp, ImmutableArray<GrowTier> tiers) => new()
    {
        ["tier"] = tiers[lamp.Tier].Name,
        ["from"] = Iso(lamp.From),
        ["until"] = Iso(lamp.Until),
        ["photoperiodH"] = Math.Round(lamp.PhotoperiodH, 2),
    };

    private static JsonObject Task(PlanTask task) => new()
    {
        ["date"] = Iso(task.Date),
        ["kind"] = TaskWords.Key(task.Kind),
        ["subject"] = task.Subject,
        ["words"] = task.Words,
    };

    private static JsonBatch Batch(PlannedBatch one, ImmutableArray<GrowTier> tiers) => new(
        one.Lot, one.Batch.Crop.Name, one.Batch.Trays, one.Batch.UnderWay is not null, Iso(one.Timing.Sow),
        one.Batch.Crop.IsSoaked && one.Batch.UnderWay is null ? Iso(one.Timing.Sow.PlusDays(-1)) : null,
        [
            .. one.Batch.Crop.LitStages.Zip(one.Timing.StageStarts, (stage, start) => Stage(stage, Iso(start))),
        ],
        Iso(one.Timing.Harvest), Iso(one.Batch.Due), [.. one.Batch.Orders.Select(Order)],
        [.. one.Stays.Select(stay => new JsonStay(tiers[stay.Tier].Name, stay.Trays, Iso(stay.From), Iso(stay.Until)))]);

    private static JsonStage Stage(LitStage stage, string from) => new(
        stage.Name, from,
        new JsonNeeds(
            Range(stage.Days.Least, stage.Days.Most), Range(stage.DailyLightMolPerM2D), Range(stage.PpfdUmolPerM2S),
            Range(stage.PhotoperiodH),
            [.. stage.Floods.Select(floods => new JsonFloods(floods.Media, Range(floods.PerDay.Least, floods.PerDay.Most)))]));

    private static JsonRange Range(Bounds bounds) => Range(bounds.Least, bounds.Most);

    private static JsonRange Range(double least, double most) => new(least, most);

    private static JsonOrder Order(Order order) => new(
        order.Customer, order.Crop.Name, (order.Amount as LiveTrays)?.Count, (order.Amount as CutWeight)?.WeightG, Iso(order.Due),
            order.Line);

    private static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);
}

// What no version reads again, only that it is there, is nodes.
internal sealed record JsonPlan(
    string Site, string Zone, string From, string Until, JsonObject Quality, ImmutableArray<JsonBatch> Batches,
    ImmutableArray<JsonShortfall> NotMet, JsonArray RoomThatWouldMeetAll, JsonArray Lamps, JsonArray Tasks, JsonObject Forecast);

internal sealed record JsonBatch(
    string Lot, string Crop, int Trays, bool GrowsAlready, string Sow, string? Soak, ImmutableArray<JsonStage> Stages, string Harvest,
    string Due, ImmutableArray<JsonOrder> Orders, ImmutableArray<JsonStay> Stays);

internal sealed record JsonStage(string Name, string From, JsonNeeds Needs);

internal sealed record JsonNeeds(
    JsonRange Days, JsonRange DailyLightMolPerM2D, JsonRange PpfdUmolPerM2S, JsonRange PhotoperiodH,
    ImmutableArray<JsonFloods> FloodsPerDay);

internal sealed record JsonFloods(string? Media, JsonRange PerDay);

internal sealed record JsonRange(double Least, double Most);

internal sealed record JsonStay(string Tier, int Trays, string From, string Until);

internal sealed record JsonOrder(string Customer, string Crop, int? Trays, double? WeightG, string Due, int Line);

internal sealed record JsonShortfall(JsonOrder Order, string Reason, string Remedy);

[JsonSourceGenerationOptions(
    WriteIndented = true, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(JsonPlan))]
internal sealed partial class PlanJsonContext : JsonSerializerContext;
