using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A survey of floods in the words of terminal and page.</summary>
public static class FloodWording
{
    /// <summary>What the numbers of a table mean.</summary>
    public static string Legend { get; } =
        "Flow: from a reservoir at its normal volume to one at its lowest working level. Full: at nine tenths of the standpipe. "
        + $"Stands: when the pump runs on. Empty: below {FloodTray.DrainedBelowMm:0} mm.";

    /// <summary>The heads of a table of tiers.</summary>
    public static ImmutableArray<string> Columns { get; } = ["tier", "flow", "full after", "stands at", "empty after"];

    /// <summary>The rows of a table of tiers, the top tier first.</summary>
    /// <param name="survey">The survey.</param>
    public static IEnumerable<string[]> Rows(FloodSurvey survey)
    {
        ArgumentNullException.ThrowIfNull(survey);
        return survey.Tiers.Reverse().Select(tier => tier.TakesPart
            ? (string[])
            [
                $"tier {tier.Tier.Number}", $"{tier.FlowLpm:0.0} to {tier.FlowAtLowestLpm:0.0} L/min", Minutes(tier.Filled),
                $"{tier.SettledMm:0} mm", tier.Drained == Duration.Zero ? "-" : Minutes(tier.Drained),
            ]
            : [$"tier {tier.Tier.Number}", "out of use", "-", "-", "-"]);
    }

    /// <summary>What is wrong and what to change; none when nothing is wrong.</summary>
    /// <param name="advice">The advice.</param>
    public static IEnumerable<(string Text, ImmutableArray<string> Items)> Wrong(FloodAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        foreach (var problem in FloodProblemWords.Of(advice.Survey))
        {
            yield return ($"Wrong: {problem}.", []);
        }

        foreach (var (index, way) in advice.Ways.Index())
        {
            yield return (index == 0 ? "To put it right:" : "Or:", way.Changes);
            yield return ($"Simulated so, {Outcome(way.After)}.", []);
        }

        if (advice is { Ways.IsEmpty: true, Survey.Findings.IsEmpty: false })
        {
            yield return (
                "Nothing that was tried on valves, bores, pump, drains or times puts it right: flood fewer tiers, or measure the pump.",
                []);
        }
    }

    private static string Outcome(FloodSurvey after)
    {
        var taking = after.Tiers.Where(tier => tier.TakesPart).ToList();
        var numbers = $"tiers get {Range(taking.Select(tier => tier.FlowLpm), "0.0")} L/min, are full after "
            + $"{Range(taking.Select(tier => tier.Filled?.TotalMinutes), "0.0")} min, stand at "
            + $"{Range(taking.Select(tier => tier.SettledMm), "0")} mm and are empty after "
            + $"{Range(taking.Select(tier => tier.Drained?.TotalMinutes), "0.0")} min";
        return after.Findings.IsEmpty ? numbers : $"{numbers}; what is left: {string.Join("; ", FloodProblemWords.Of(after))}";
    }

    internal static string Minutes(Duration? length) => length is { } known ? $"{known.TotalMinutes:0.0} min" : "never";

    private static string Range(IEnumerable<double> values, string format) => Range(values.Select(value => (double?)value), format);

    private static string Range(IEnumerable<double?> values, string format)
    {
        var known = values.OfType<double>().ToList();
        var (least, most) = (known.Min().ToString(format), known.Max().ToString(format));
        return least == most ? least : $"{least} to {most}";
    }
}
