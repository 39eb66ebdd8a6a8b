using System.Collections.Immutable;
using System.Text.Json.Serialization;
using NodaTime;
using RackController.Service;

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
/// <param name="ProofTests">Every proof test.</param>
/// <param name="ProofTest">The one that is under way; null while none is.</param>
internal sealed record ApiStatus(
    string Site, string At, bool IsWallTrusted, string? ScanFault, long Scans, long LateScans, ImmutableArray<ApiRack> Racks,
    ImmutableArray<ApiCircuit> Circuits, ImmutableArray<ApiLoad> Loads, ImmutableArray<ApiReading> Readings,
    ImmutableArray<ApiAlarm> Alarms, ImmutableArray<ApiDue> Due, ImmutableArray<ApiProofTest> ProofTests, ApiProofTestStep? ProofTest);

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
/// <param name="ShelvedUntil">When it comes back from the shelf; null where it is on none.</param>
internal sealed record ApiAlarm(
    string Key, string Priority, string State, string Since, string Cause, string Consequence, string Action, string RespondWithin,
    string? ShelvedUntil);

/// <summary>Something that is due.</summary>
/// <param name="At">When.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="What">What it is.</param>
internal sealed record ApiDue(string At, string Subject, string What);

/// <summary>One proof test.</summary>
/// <param name="Item">The sensor or load.</param>
/// <param name="Kind">What sort of test.</param>
/// <param name="PassedAt">When it was last passed; null for never.</param>
/// <param name="DueAt">When it is due.</param>
/// <param name="IsOverdue">Whether that has passed.</param>
/// <param name="HasFailed">Whether it failed and has not been passed since.</param>
internal sealed record ApiProofTest(string Item, string Kind, string? PassedAt, string DueAt, bool IsOverdue, bool HasFailed);

/// <summary>The step of a proof test that is under way.</summary>
/// <param name="Item">The sensor or load.</param>
/// <param name="Step">Which step, from 1.</param>
/// <param name="Steps">Of how many.</param>
/// <param name="Words">What to do, or what to look at.</param>
/// <param name="AsksNow">Whether somebody must say now what was seen.</param>
/// <param name="WaitsForRack">Whether the rack is not yet as the step needs it.</param>
/// <param name="LeftS">How long until the step, or the wait, is over, s.</param>
internal sealed record ApiProofTestStep(
    string Item, int Step, int Steps, string Words, bool AsksNow, bool WaitsForRack, double LeftS);

/// <summary>One thing that happened.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Subject">What it happened to.</param>
/// <param name="What">What happened.</param>
/// <param name="Because">Why.</param>
internal sealed record ApiEvent(string At, string Kind, string Subject, string What, string Because);

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

/// <summary>What became of a request, or why it was not taken.</summary>
/// <param name="Said">It in one line.</param>
internal sealed record ApiAnswer(string Said);

/// <summary>How notices fare.</summary>
/// <param name="IsAsked">Whether the rack file asks for any.</param>
/// <param name="IsRunning">Whether a process is there that sends them.</param>
/// <param name="Trouble">What keeps it from its work as a whole; null while nothing does.</param>
/// <param name="Ways">Every way of telling.</param>
internal sealed record ApiNotices(bool IsAsked, bool IsRunning, string? Trouble, ImmutableArray<ApiWay> Ways);

/// <summary>One way of telling.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="LastSuccess">When something last got through; null for never.</param>
/// <param name="Fault">What went wrong last; null when nothing did.</param>
/// <param name="FaultAt">When.</param>
/// <param name="Waiting">How many messages wait.</param>
internal sealed record ApiWay(string Name, Instant? LastSuccess, string? Fault, Instant? FaultAt, int Waiting);

/// <summary>How answers to programs are written and their requests read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    Converters = [typeof(InstantText)])]
[JsonSerializable(typeof(ApiStatus))]
[JsonSerializable(typeof(ApiEvent))]
[JsonSerializable(typeof(ApiRequest))]
[JsonSerializable(typeof(ApiAnswer))]
[JsonSerializable(typeof(ApiNotices))]
internal sealed partial class ApiJson : JsonSerializerContext;
