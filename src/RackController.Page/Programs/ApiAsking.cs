using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Page;

/// <summary>Reads what a program asks.</summary>
internal static class ApiAsking
{
    private const double LongestS = 7 * 24 * 3600;
    private const double LongestShelfS = 24 * 3600;

    /// <summary>Everything that can be asked. Like a person, a program releases a latch by two requests.</summary>
    public static readonly string[] All =
    [
        "stop", "resume", "flood", "skip", "hold", "end-hold", "use-tier", "rest-tier", "acknowledge", "shelve", "unshelve",
        "out-of-service", "back-in-service", "reset", "confirm-reset", "begin-test", "answer-test", "abandon-test",
    ];

    /// <summary>The request to the rack, or why there is none.</summary>
    /// <param name="asked">What the program sent.</param>
    /// <param name="site">The site.</param>
    /// <param name="by">Who asks.</param>
    /// <param name="complaint">What is wrong and what to send; empty when nothing is.</param>
    public static OperatorRequest? RequestOf(ApiRequest asked, Site site, string by, out string complaint)
    {
        var rack = site.Racks.FirstOrDefault(each => each.Name == asked.Rack);
        var request = OfRack(asked, rack, by) ?? OfAlarm(asked, by) ?? OfTest(asked, by);
        complaint = request is null ? Complaint(asked, site, rack) : "";
        return request;
    }

    private static OperatorRequest? OfRack(ApiRequest asked, Rack? rack, string by) => asked.Ask switch
    {
        "stop" when asked.Rack is null || rack is not null => new Stop(by, rack?.Id),
        "resume" when asked.Rack is null || rack is not null => new Resume(by, rack?.Id),
        "flood" when rack is not null => new FloodNow(by, rack.Id),
        "skip" when rack is not null => new SkipNextFlood(by, rack.Id),
        "end-hold" when rack is not null => new EndServiceHold(by, rack.Id),
        "hold" when rack is not null && asked.Seconds is >= 1 and <= LongestS =>
            new HoldForService(by, rack.Id, Duration.FromSeconds(asked.Seconds.Value)),
        "use-tier" or "rest-tier" when rack is not null && asked.Tier is { } tier && tier >= 1 && tier <= rack.Tiers.Length =>
            new SetTierInUse(by, rack.Id, tier, asked.Ask == "use-tier"),
        _ => null,
    };

    private static OperatorRequest? OfAlarm(ApiRequest asked, string by) => (asked.Ask, asked.Alarm) switch
    {
        ("acknowledge", { } key) => new Acknowledge(by, key),
        ("shelve", { } key) when asked.Seconds is >= 60 and <= LongestShelfS =>
            new Shelve(by, key, Duration.FromSeconds(asked.Seconds.Value)),
        ("unshelve", { } key) => new Unshelve(by, key),
        ("out-of-service" or "back-in-service", { } key) => new SetAlarmOutOfService(by, key, asked.Ask == "out-of-service"),
        ("reset", { } key) => new ResetLatch(by, key),
        ("confirm-reset", { } key) => new ConfirmReset(by, key),
        _ => null,
    };

    private static OperatorRequest? OfTest(ApiRequest asked, string by) => asked.Ask switch
    {
        "begin-test" when asked.Item is { } item => new BeginProofTest(by, item),
        "answer-test" when asked.IsSo is { } isSo => new AnswerProofTest(by, isSo),
        "abandon-test" => new AbandonProofTest(by),
        _ => null,
    };

    private static string Complaint(ApiRequest asked, Site site, Rack? rack) => asked.Ask switch
    {
        "shelve" when asked.Alarm is not null => "`seconds` is missing or out of range: an alarm is shelved for a minute to a day",
        "acknowledge" or "shelve" or "unshelve" or "out-of-service" or "back-in-service" or "reset" or "confirm-reset" =>
            "`alarm` is missing: name the key of an alarm",
        "begin-test" => "`item` is missing: name a sensor or load that has a proof test",
        "answer-test" => "`isSo` is missing: true where it is as the step says, else false",
        "flood" or "skip" or "end-hold" or "hold" or "use-tier" or "rest-tier" or "stop" or "resume" when rack is null =>
            $"`rack` names none of the racks: it is one of {string.Join(", ", site.Racks.Select(each => each.Name))}",
        "hold" => "`seconds` is missing or out of range: 1 s to a week; the rack cuts it to what it allows",
        "use-tier" or "rest-tier" => $"`tier` is missing or out of range: 1 to {rack!.Tiers.Length}",
        _ => $"`ask` is one of {string.Join(", ", All)}",
    };
}
