using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RackController.Page;

/// <summary>The whole site, as a program reads it. Numbers carry their unit in their name; times are ISO 8601 in UTC.</summary>
/// <param name="Site">The name of the site.</param>
/// <param name="At">The time of the picture.</param>
/// <param name="IsWallTrusted">Whether the wall clock may be believed.</param>
/// <param name="ScanFault">What keeps the scan from being good; null while it is.</param>
/// <param name="Scans">How many scans there were since the start.</param>
/// <param name="LateScans">How many of them were late.</param>
/// <param name="Racks">Every rack.</param>
/// <param name="Circuits">Every circuit.</param>
/// <param name="Loads">Every load.</param>
/// <param name="Readings">Every sensor.</param>
/// <param name="Alarms">Every alarm that is not normal, most urgent first.</param>
/// <param name="Due">What is due next, soonest first.</param>
internal sealed record ApiStatus(
    string Site, string At, bool IsWallTrusted, string? ScanFault, long Scans, long LateScans, ImmutableArray<ApiRack> Racks,
    ImmutableArray<ApiCircuit> Circuits, ImmutableArray<ApiLoad> Loads, ImmutableArray<ApiReading> Readings,
    ImmutableArray<ApiAlarm> Alarms, ImmutableArray<ApiDue> Due);

/// <summary>One rack.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Phase">Where its flood cycle is: idle, waiting, filling, soaking or draining.</param>
/// <param name="IsStopped">Whether somebody stopped it.</param>
/// <param name="HoldLeftS">How long a service hold goes on, in seconds; null while there is none.</param>
/// <param name="SkipsNextFlood">Whether the next flood of the schedule is left out.</param>
/// <param name="TiersInUse">The numbers of the tiers that take part.</param>
internal sealed record ApiRack(
    string Name, string Phase, bool IsStopped, double? HoldLeftS, bool SkipsNextFlood, ImmutableArray<int> TiersInUse);

/// <summary>One circuit.</summary>
/// <param name="Name">Its name.</param>
/// <param name="CurrentA">What it carries, in amperes.</param>
/// <param name="LimitA">What it may carry for hours, in amperes.</param>
/// <param name="IsMeasured">Whether a sensor says so; else it is the sum of nameplates.</param>
internal sealed record ApiCircuit(string Name, double CurrentA, double LimitA, bool IsMeasured);

/// <summary>One load.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it does: pump, valve, light, fan or aerator.</param>
/// <param name="IsOn">What it is told.</param>
/// <param name="Why">Why, in one phrase.</param>
/// <param name="Wanted">What schedule, flood cycle or person would like.</param>
/// <param name="Interlocks">What each objecting interlock says.</param>
/// <param name="Circuit">What its circuit says.</param>
internal sealed record ApiLoad(
    string Name, string Kind, bool IsOn, string Why, string Wanted, ImmutableArray<string> Interlocks, string Circuit);

/// <summary>What one sensor says.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Value">What it says; null where that may not be believed. A contact says 0 or 1.</param>
/// <param name="Unit">The unit of the value; empty for a contact.</param>
/// <param name="Doubt">Why it may not be believed; null where it may.</param>
/// <param name="AgeS">How old it is, in seconds.</param>
internal sealed record ApiReading(string Name, string Kind, double? Value, string Unit, string? Doubt, double AgeS);

/// <summary>One alarm.</summary>
/// <param name="Key">Unique on the site and stable across versions.</param>
/// <param name="Priority">critical, high, medium or low.</param>
/// <param name="State">One of the states of ISA-18.2.</param>
/// <param name="Since">Since when.</param>
/// <param name="Cause">What is wrong.</param>
/// <param name="Consequence">What follows if nobody acts.</param>
/// <param name="Action">What to do.</param>
/// <param name="RespondWithin">How soon.</param>
internal sealed record ApiAlarm(
    string Key, string Priority, string State, string Since, string Cause, string Consequence, string Action, string RespondWithin);

/// <summary>Something that is due.</summary>
/// <param name="At">When.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="What">What it is.</param>
internal sealed record ApiDue(string At, string Subject, string What);

/// <summary>One thing that happened.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Subject">What it happened to.</param>
/// <param name="What">What happened.</param>
/// <param name="Because">Why.</param>
internal sealed record ApiEvent(string At, string Kind, string Subject, string What, string Because);

/// <summary>What a program asks of the rack.</summary>
/// <param name="Ask">What: stop, resume, flood, skip, hold, end-hold, use-tier, rest-tier or acknowledge.</param>
/// <param name="Rack">The name of the rack; null for every rack, where that can be asked.</param>
/// <param name="Tier">The number of the tier, where one is meant.</param>
/// <param name="Alarm">The key of the alarm, where one is meant.</param>
/// <param name="Seconds">How long, in seconds, where a length is meant.</param>
internal sealed record ApiRequest(string? Ask, string? Rack, int? Tier, string? Alarm, double? Seconds);

/// <summary>What became of a request, or why it was not taken.</summary>
/// <param name="Said">It in one line.</param>
internal sealed record ApiAnswer(string Said);

/// <summary>How answers to programs are written and their requests read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(ApiStatus))]
[JsonSerializable(typeof(ApiEvent))]
[JsonSerializable(typeof(ApiRequest))]
[JsonSerializable(typeof(ApiAnswer))]
internal sealed partial class ApiJson : JsonSerializerContext;
