using System.Collections.Immutable;
using System.Text.Json.Serialization;
using NodaTime;
using RackController.Service;

namespace RackController.Page;

/// <summary>Where works of upkeep stand.</summary>
/// <param name="Works">Every work of every rack, what is due first in front.</param>
/// <param name="Relays">How much of its life each relay has had, the most worn first.</param>
/// <param name="Done">What was put down as done, newest first.</param>
internal sealed record ApiUpkeep(
    ImmutableArray<ApiUpkeepWork> Works, ImmutableArray<ApiRelayLife> Relays, ImmutableArray<ApiUpkeepDone> Done);

/// <summary>One work on one rack.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Work">The key of the work.</param>
/// <param name="What">It in words.</param>
/// <param name="IsDue">Whether it is due.</param>
/// <param name="IsOverdue">Whether it has waited too long, so that an alarm calls for it.</param>
/// <param name="Since">Since when it is counted.</param>
/// <param name="WasDone">Whether it was done then; else that is when the record begins.</param>
/// <param name="Counts">What it is counted in, what is nearest to its limit first.</param>
/// <param name="ExpectedAt">When it is expected to be due; null where that is not known, or is over.</param>
internal sealed record ApiUpkeepWork(
    string Rack, string Work, string What, bool IsDue, bool IsOverdue, Instant Since, bool WasDone, ImmutableArray<ApiUpkeepCount> Counts,
    Instant? ExpectedAt);

/// <summary>One count that can make a work due.</summary>
/// <param name="Of">floods, days or pumpHours.</param>
/// <param name="Count">How many so far.</param>
/// <param name="Limit">With how many it is due.</param>
internal sealed record ApiUpkeepCount(string Of, double Count, double Limit);

/// <summary>The life of a relay.</summary>
/// <param name="Load">The load that it switches.</param>
/// <param name="Operations">How often it has switched on.</param>
/// <param name="RatedOperations">How often it is made for.</param>
internal sealed record ApiRelayLife(string Load, long Operations, int RatedOperations);

/// <summary>Work that was put down as done.</summary>
/// <param name="Number">Its number in the growing book.</param>
/// <param name="At">When.</param>
/// <param name="By">By whom.</param>
/// <param name="Rack">On which rack.</param>
/// <param name="Work">The key of the work.</param>
/// <param name="Note">What there is to say of it; empty for nothing.</param>
/// <param name="IsStruck">Whether it was struck, and counts no more.</param>
internal sealed record ApiUpkeepDone(long Number, Instant At, string By, string Rack, string Work, string Note, bool IsStruck);

/// <summary>What a program puts down as done.</summary>
/// <param name="Rack">The name of the rack.</param>
/// <param name="Work">The key of the work.</param>
/// <param name="Note">What there is to say of it; null for nothing.</param>
internal sealed record ApiUpkeepAsked(string? Rack, string? Work, string? Note = null);

/// <summary>How upkeep is written and read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    Converters = [typeof(InstantText)])]
[JsonSerializable(typeof(ApiUpkeep))]
[JsonSerializable(typeof(ApiUpkeepAsked))]
internal sealed partial class ApiUpkeepJson : JsonSerializerContext;
