using NodaTime;

namespace RackController.Bench;

/// <summary>What a campaign found, in the words that terminal and page share.</summary>
public static class CampaignWords
{
    /// <summary>How many cases, of what, how fast.</summary>
    /// <param name="findings">The findings.</param>
    public static string Tried(CampaignFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var pairs = findings.Outcomes.Count(outcome => outcome.Case.Faults.Length > 1);
        return $"{Count(findings.Outcomes.Length - pairs, "single fault")} and {Count(pairs, "pair")} of "
            + $"{findings.Plan.Modes.Length} modes, {findings.RackDays:0} rack-days in {findings.CasesTookS:0.0} s: "
            + $"{findings.RackDaysPerSecond:0} rack-days a second";
    }

    /// <summary>How many failed, by their class.</summary>
    /// <param name="findings">The findings.</param>
    public static string Failed(CampaignFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return findings.Passed
            ? "no hazard, no rack stuck, no breakdown, nothing silent"
            : string.Join(", ", Enum.GetValues<FailureClass>().Where(how => how != FailureClass.None)
                .Select(how => how is FailureClass.Stuck or FailureClass.Silent
                    ? $"{findings.FailedBy(how)} {Word(how)}"
                    : Count(findings.FailedBy(how), Word(how))));
    }

    /// <summary>False trips, as a rate.</summary>
    /// <param name="quiet">The quiet years.</param>
    public static string FalseTrips(QuietYears quiet)
    {
        ArgumentNullException.ThrowIfNull(quiet);
        return quiet.RackYears == 0
            ? "false trips: not looked for"
            : $"false trips: {quiet.TripsPerRackYear:0.##} in a rack-year (in {quiet.RackYears:0.#} of them without a fault, with sensors "
                + "that scatter as their data sheets let them); "
                + $"false alarms: {quiet.Alarms.Sum(alarm => alarm.Count) / quiet.RackYears:0.##}";
    }

    /// <summary>A class of failures.</summary>
    /// <param name="how">Which.</param>
    public static string Word(FailureClass how) => how switch
    {
        FailureClass.Hazard => "hazard",
        FailureClass.Stuck => "stuck",
        FailureClass.Crash => "breakdown",
        FailureClass.Silent => "silent",
        _ => "held",
    };

    /// <summary>So many of something: <c>1 case</c>, <c>2 cases</c>.</summary>
    /// <param name="number">How many.</param>
    /// <param name="what">Of what, in the singular.</param>
    public static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";

    /// <summary>A time to a trip or an alarm.</summary>
    /// <param name="time">The time; null where there was none.</param>
    public static string Time(Duration? time) => time is { } known ? Spans.Words(known) : "-";
}
