using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Page;

/// <summary>Reads what a program asks.</summary>
internal static class ApiAsking
{
    private const double LongestS = 7 * 24 * 3600;

    /// <summary>The request to the rack, or why there is none.</summary>
    /// <param name="asked">What the program sent.</param>
    /// <param name="site">The site.</param>
    /// <param name="by">Who asks.</param>
    /// <param name="complaint">What is wrong and what to send; empty when nothing is.</param>
    public static OperatorRequest? RequestOf(ApiRequest? asked, Site site, string by, out string complaint)
    {
        complaint = "";
        var rack = site.Racks.FirstOrDefault(each => each.Name == asked?.Rack);
        switch (asked?.Ask)
        {
            case "stop" when asked.Rack is null || rack is not null:
                return new Stop(by, rack?.Id);
            case "resume" when asked.Rack is null || rack is not null:
                return new Resume(by, rack?.Id);
            case "acknowledge" when asked.Alarm is { } alarm:
                return new Acknowledge(by, alarm);
            case "flood" when rack is not null:
                return new FloodNow(by, rack.Id);
            case "skip" when rack is not null:
                return new SkipNextFlood(by, rack.Id);
            case "end-hold" when rack is not null:
                return new EndServiceHold(by, rack.Id);
            case "hold" when rack is not null && asked.Seconds is >= 1 and <= LongestS:
                return new HoldForService(by, rack.Id, Duration.FromSeconds(asked.Seconds.Value));
            case "use-tier" or "rest-tier" when rack is not null && asked.Tier is { } tier && tier >= 1 && tier <= rack.Tiers.Length:
                return new SetTierInUse(by, rack.Id, tier, asked.Ask == "use-tier");
            default:
                complaint = Complaint(asked, site, rack);
                return null;
        }
    }

    private static string Complaint(ApiRequest? asked, Site site, Rack? rack) => asked?.Ask switch
    {
        "acknowledge" => "`alarm` is missing: name the key of an alarm",
        "flood" or "skip" or "end-hold" or "hold" or "use-tier" or "rest-tier" or "stop" or "resume" when rack is null =>
            $"`rack` names none of the racks: it is one of {string.Join(", ", site.Racks.Select(each => each.Name))}",
        "hold" => "`seconds` is missing or out of range: 1 s to a week; the rack cuts it to what it allows",
        "use-tier" or "rest-tier" => $"`tier` is missing or out of range: 1 to {rack!.Tiers.Length}",
        _ => "`ask` is one of stop, resume, flood, skip, hold, end-hold, use-tier, rest-tier, acknowledge",
    };
}
