using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RackController.Page;

/// <summary>The past of one rack, as a program reads it: in the units that sensors measure in, whatever people are shown.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="From">When the span begins.</param>
/// <param name="Until">When it ends.</param>
/// <param name="Complaint">What could not be read of what was asked, and what is told instead; null when all could.</param>
/// <param name="Trends">What each sensor said, thinned; over more than a quarter the sums of days.</param>
/// <param name="Loads">When each load was on.</param>
/// <param name="Marks">Floods and alarms, oldest first.</param>
internal sealed record ApiHistory(
    string Rack, string From, string Until, string? Complaint, ImmutableArray<ApiTrend> Trends, ImmutableArray<ApiLoadTimes> Loads,
    ImmutableArray<ApiMark> Marks);

/// <summary>What one sensor said, or what one thing came to each day.</summary>
/// <param name="Chart">The chart of the page that it stands in.</param>
/// <param name="Name">The sensor, load or rack.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Points">Its points, oldest first.</param>
internal sealed record ApiTrend(string Chart, string Name, string Unit, ImmutableArray<ApiPoint> Points);

/// <summary>What was said in a stretch of time.</summary>
/// <param name="At">When it begins.</param>
/// <param name="Least">The least.</param>
/// <param name="Mean">The mean.</param>
/// <param name="Most">The greatest.</param>
/// <param name="IsAfterGap">Whether nothing was known before it.</param>
internal sealed record ApiPoint(string At, double Least, double Mean, double Most, bool IsAfterGap);

/// <summary>When a load was on.</summary>
/// <param name="Load">The load.</param>
/// <param name="On">Each time.</param>
internal sealed record ApiLoadTimes(string Load, ImmutableArray<ApiSpan> On);

/// <summary>A span of time.</summary>
/// <param name="From">When it begins.</param>
/// <param name="Until">When it ends.</param>
internal sealed record ApiSpan(string From, string Until);

/// <summary>A flood or an alarm.</summary>
/// <param name="At">When.</param>
/// <param name="IsAlarm">Whether it is an alarm.</param>
/// <param name="What">What happened.</param>
internal sealed record ApiMark(string At, bool IsAlarm, string What);

/// <summary>One flood.</summary>
/// <param name="At">When the pump began.</param>
/// <param name="Rack">The rack.</param>
/// <param name="Because">Why it was due.</param>
/// <param name="FillS">How long it filled, s; null where that is not known.</param>
/// <param name="SoakS">How long water was held, s; null likewise.</param>
/// <param name="WaterL">How much water it took, litres; null where no level sensor tells.</param>
/// <param name="CutShort">What cut it short; null when nothing did.</param>
/// <param name="ValvesShut">The tiers that took no part, by their valves; null where a valve was switched meanwhile.</param>
/// <param name="Tiers">What the tiers' own sensors tell.</param>
internal sealed record ApiFlood(
    string At, string Rack, string Because, double? FillS, double? SoakS, double? WaterL, string? CutShort,
    ImmutableArray<int>? ValvesShut, ImmutableArray<ApiTierFlood> Tiers);

/// <summary>One flood of one tier.</summary>
/// <param name="Tier">The tier, 1 at the bottom.</param>
/// <param name="FullAfterS">How long until it was full, s; null where none tells.</param>
/// <param name="EmptyAfterS">How long until it was empty after the pump ended, s; null likewise.</param>
internal sealed record ApiTierFlood(int Tier, double? FullAfterS, double? EmptyAfterS);

/// <summary>A page of what happened, newest first.</summary>
/// <param name="Events">What happened.</param>
/// <param name="Before">What to name as <c>before</c> for the page after it; null where this is the last.</param>
internal sealed record ApiEventPage(ImmutableArray<ApiEvent> Events, long? Before);

/// <summary>Every alarm of the site, and how often alarms called.</summary>
/// <param name="Known">Every alarm that there can be.</param>
/// <param name="Days">Over how many days it is counted.</param>
/// <param name="Count">How many alarms came in them.</param>
/// <param name="MostInTenMinutes">The most within any ten minutes.</param>
/// <param name="Floods">How many stretches had more than ten within ten minutes.</param>
/// <param name="MostFrequent">The most frequent, and how often each came.</param>
/// <param name="Chattering">Those that came three times within a minute, and how often that was so.</param>
/// <param name="Standing">Those that have not been normal for more than a day.</param>
internal sealed record ApiAlarms(
    ImmutableArray<ApiKnownAlarm> Known, int Days, int Count, int MostInTenMinutes, int Floods,
    ImmutableArray<ApiAlarmCount> MostFrequent, ImmutableArray<ApiAlarmCount> Chattering, ImmutableArray<string> Standing);

/// <summary>An alarm that there can be.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Priority">critical, high, medium or low.</param>
/// <param name="State">One of the states of ISA-18.2.</param>
internal sealed record ApiKnownAlarm(string Key, string Priority, string State);

/// <summary>How often an alarm did something.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Count">How often.</param>
internal sealed record ApiAlarmCount(string Key, int Count);

/// <summary>How the past is written, without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ApiHistory))]
[JsonSerializable(typeof(ImmutableArray<ApiFlood>))]
[JsonSerializable(typeof(ApiEventPage))]
[JsonSerializable(typeof(ApiAlarms))]
internal sealed partial class ApiPastJson : JsonSerializerContext;
