using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RackController.Page;

/// <summary>A rack to be fitted: to floods on record, or to times by hand.</summary>
/// <param name="Rack">Its name; the first where it is left out.</param>
/// <param name="Since">No flood on record before this day; the newest where it is left out.</param>
/// <param name="Fills">Times by hand from the pump's start until water runs into the standpipe.</param>
/// <param name="Drains">Times by hand from the pump's stop until less than 3 mm stands in the tray.</param>
internal sealed record ApiTuneAsked(string? Rack, string? Since, ImmutableArray<ApiHandTimes>? Fills, ImmutableArray<ApiHandTimes>? Drains);

/// <summary>Times of one tier by hand, flood by flood.</summary>
/// <param name="Tier">The tier, 1 at the bottom.</param>
/// <param name="Seconds">The times, s.</param>
internal sealed record ApiHandTimes(int Tier, ImmutableArray<double>? Seconds);

/// <summary>Which fit to begin a draft with.</summary>
/// <param name="Fit">Its number.</param>
internal sealed record ApiTuneDraft(int? Fit);

/// <summary>The last fit, as far as it has come.</summary>
/// <param name="Fit">Its number.</param>
/// <param name="Rack">The rack.</param>
/// <param name="IsUnderWay">Whether it goes on.</param>
/// <param name="Refused">Why there is none; null where there is, and while it goes on.</param>
/// <param name="Floods">How many floods it is of; 0 where there is none.</param>
/// <param name="On">The local date of the last flood; null likewise.</param>
/// <param name="Times">What was timed.</param>
/// <param name="Figures">What was fitted.</param>
/// <param name="LeftOut">Which times were left out, and why.</param>
/// <param name="Untold">What these times could not tell, and why.</param>
/// <param name="OffPercent">How far a single time is off from the fit, the root of the mean square; null where there is none.</param>
internal sealed record ApiTune(
    int Fit, string Rack, bool IsUnderWay, string? Refused, int Floods, string? On, ImmutableArray<ApiTunedTime> Times,
    ImmutableArray<ApiTunedFigure> Figures, ImmutableArray<string> LeftOut, ImmutableArray<string> Untold, double? OffPercent);

/// <summary>A mark of one tier that was timed.</summary>
/// <param name="Tier">The tier.</param>
/// <param name="What">fills or drains.</param>
/// <param name="ToMm">To which depth, mm.</param>
/// <param name="ValvesShut">The tiers that took no part in those floods.</param>
/// <param name="Count">How many times it was timed.</param>
/// <param name="MeanS">The mean of its times, s.</param>
/// <param name="WithoutMeasuredS">What the file foretells without what was measured, s; null for never.</param>
/// <param name="ByFitS">What the fit foretells, s; null for never.</param>
internal sealed record ApiTunedTime(
    int Tier, string What, double ToMm, ImmutableArray<int> ValvesShut, int Count, double MeanS, double? WithoutMeasuredS, double? ByFitS);

/// <summary>A figure that was fitted.</summary>
/// <param name="Of">pump-speed, screen, standpipe, weep or branch, as in the rack file.</param>
/// <param name="Tier">Of which tier; null where it is of the whole rack.</param>
/// <param name="Value">Share of what is written; of a screen, a minor loss coefficient.</param>
/// <param name="Within">Half its 95 % confidence interval.</param>
internal sealed record ApiTunedFigure(string Of, int? Tier, double Value, double Within);

/// <summary>A flood that is on record with times.</summary>
/// <param name="At">When the pump began.</param>
/// <param name="ValvesShut">The tiers that took no part.</param>
/// <param name="Tiers">What was timed.</param>
internal sealed record ApiTimedFlood(string At, ImmutableArray<int> ValvesShut, ImmutableArray<ApiTimedTier> Tiers);

/// <summary>One time of one tier.</summary>
/// <param name="Tier">The tier.</param>
/// <param name="What">fills or drains.</param>
/// <param name="ToMm">To which depth, mm.</param>
/// <param name="Seconds">In how many seconds.</param>
internal sealed record ApiTimedTier(int Tier, string What, double ToMm, double Seconds);

/// <summary>How fits are written and read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(ApiTuneAsked))]
[JsonSerializable(typeof(ApiTuneDraft))]
[JsonSerializable(typeof(ApiTune))]
[JsonSerializable(typeof(ImmutableArray<ApiTimedFlood>))]
internal sealed partial class ApiTuneJson : JsonSerializerContext;
