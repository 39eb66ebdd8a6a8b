using System.Text.Json.Serialization;

namespace RackController.Page;

/// <summary>What a program asks of the rack.</summary>
/// <param name="Ask">What; one of <see cref="ApiAsking.All"/>.</param>
/// <param name="Rack">The name of the rack; null for every rack, where that can be asked.</param>
/// <param name="Tier">The number of the tier, where one is meant.</param>
/// <param name="Alarm">The key of the alarm, where one is meant.</param>
/// <param name="Seconds">How long, in seconds, where a length is meant.</param>
/// <param name="Item">The sensor or load whose proof test is meant.</param>
/// <param name="IsSo">Whether it is as the step of a proof test says.</param>
internal sealed record ApiRequest(
    string? Ask, string? Rack, int? Tier, string? Alarm, double? Seconds, string? Item = null, bool? IsSo = null);

/// <summary>A text to be judged and tried.</summary>
/// <param name="Text">A whole rack file.</param>
internal sealed record ApiDraftText(string? Text);

/// <summary>Something to put down of a batch.</summary>
/// <param name="What">sown, moved, harvested, discarded, noted or struck.</param>
/// <param name="Lot">The lot code of the batch.</param>
/// <param name="Day">The day; today where it is left out.</param>
/// <param name="SeedLot">Of what is sown: the lot of the seed.</param>
/// <param name="Stage">Of what is moved: the stage in the light, from 0.</param>
/// <param name="Places">Of what is moved: where all of its trays stand then; of what is harvested or thrown away: where those
/// stood.</param>
/// <param name="Trays">Of what is harvested or thrown away: how many.</param>
/// <param name="WeightG">Of what is harvested: the weight in all, g.</param>
/// <param name="To">Of what is harvested: to whom it goes.</param>
/// <param name="Text">The note, or why something is thrown away or struck.</param>
/// <param name="Number">Of what is struck: the number of the entry.</param>
internal sealed record ApiDeed(
    string? What, string? Lot, string? Day, string? SeedLot, int? Stage, ApiPlace[]? Places, int? Trays, double? WeightG,
    string? To, string? Text, long? Number);

/// <summary>Trays on a tier.</summary>
/// <param name="Tier">The tier with its rack.</param>
/// <param name="Trays">How many.</param>
internal sealed record ApiPlace(string Tier, int Trays);

/// <summary>A rack to be fitted: to floods on record, or to times by hand.</summary>
/// <param name="Rack">Its name; the first where it is left out.</param>
/// <param name="Since">No flood on record before this day; the newest where it is left out.</param>
/// <param name="Fills">Times by hand from the pump's start until water runs into the standpipe.</param>
/// <param name="Drains">Times by hand from the pump's stop until less than 3 mm stands in the tray.</param>
internal sealed record ApiTuneAsked(string? Rack, string? Since, ApiHandTimes[]? Fills, ApiHandTimes[]? Drains);

/// <summary>Times of one tier by hand, flood by flood.</summary>
/// <param name="Tier">The tier, 1 at the bottom.</param>
/// <param name="Seconds">The times, s.</param>
internal sealed record ApiHandTimes(int Tier, double[]? Seconds);

/// <summary>Which fit to begin a draft with.</summary>
/// <param name="Fit">Its number.</param>
internal sealed record ApiTuneDraft(int? Fit);

/// <summary>What a program puts down as done.</summary>
/// <param name="Rack">The name of the rack.</param>
/// <param name="Work">The key of the work.</param>
/// <param name="Note">What there is to say of it; null for nothing.</param>
internal sealed record ApiUpkeepAsked(string? Rack, string? Work, string? Note = null);

/// <summary>How requests of programs are read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(ApiRequest))]
[JsonSerializable(typeof(ApiDraftText))]
[JsonSerializable(typeof(ApiDeed))]
[JsonSerializable(typeof(ApiTuneAsked))]
[JsonSerializable(typeof(ApiTuneDraft))]
[JsonSerializable(typeof(ApiUpkeepAsked))]
internal sealed partial class ApiJson : JsonSerializerContext;
