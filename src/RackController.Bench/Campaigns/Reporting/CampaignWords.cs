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
        return $"{findings.Outcomes.Length - pairs} single faults and {pairs} pairs of {findings.Plan.Modes.Length} modes, "
            + $"{findings.RackDays:0} rack-days in {findings.CasesTookS:0.0} s: {findings.RackDaysPerSecond:0} rack-days a second";
    }

    /// <summary>How many failed, by their class.</summary>
    /// <param name="findings">The findings.</param>
    public static string Failed(CampaignFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return findings.Passed
            ? "no hazard, no rack stuck, no crash, nothing silent"
            : string.Join(", ", Enum.GetValues<FailureClass>().Where(how => how != FailureClass.None)
                .Select(how => $"{findings.FailedBy(how)} {Word(how)}"));
    }

    /// <summary>False trips, as a rate.</summary>
    /// <param name="quiet">The quiet years.</param>
    public static string FalseTrips(QuietYears quiet)
    {
        ArgumentNullException.ThrowIfNull(quiet);
        return quiet.RackYears == 0
            ? "false trips: not looked for"
            : $"false trips: {quiet.TripsPerRackYear:0.##} in a rack-year ({quiet.RackYears:0.#} rack-years without a fault, sensors "
                + "scattering as their data sheets let them); "
                + $"false alarms: {quiet.Alarms.Sum(alarm => alarm.Count) / quiet.RackYears:0.##}";
    }

    /// <summary>A class of failures.</summary>
    /// <param name="how">Which.</param>
    public static string Word(FailureClass how) => how switch
    {
        FailureClass.Hazard => "hazards",
        FailureClass.Stuck => "stuck",
        FailureClass.Crash => "crashes",
        FailureClass.Silent => "silent",
        _ => "held",
    };

    /// <summary>A time to a trip or an alarm.</summary>
    /// <param name="time">The time; null where there was none.</param>
    public static string Time(Duration? time) => time is { } known ? Spans.Words(known) : "-";
}
