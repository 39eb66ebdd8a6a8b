using System.Collections.Immutable;
using System.Globalization;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A fit in words, wherever it is shown: what was timed, the figures, and what they do not tell.</summary>
/// <param name="Head">Of which rack, floods and day.</param>
/// <param name="Times">What was timed with what was foretold, top tier first; a cell for each of <see cref="Columns"/>.</param>
/// <param name="Figures">Every figure with its interval.</param>
/// <param name="Remarks">What else there is to know, in sentences.</param>
public sealed record TunedWords(
    string Head, ImmutableArray<ImmutableArray<string>> Times, ImmutableArray<string> Figures, ImmutableArray<string> Remarks)
{
    /// <summary>The heads of the table of times.</summary>
    public static ImmutableArray<string> Columns { get; } = ["tier", "timed", "times", "mean", "without `measured`", "by the fit"];

    // Below, the pump gives so much less than its curve that somebody should look (common practice, no source).
    private const double WornBelow = 0.9;

    /// <summary>Puts a fit into words.</summary>
    /// <param name="tuned">The fit.</param>
    /// <param name="units">The units that depths are shown in.</param>
    /// <param name="earlier">What the rack file has from an earlier fit, which this one replaces; null where it has none.</param>
    public static TunedWords Of(TunedRack tuned, ShownUnits units, MeasuredRack? earlier)
    {
        ArgumentNullException.ThrowIfNull(tuned);
        ArgumentNullException.ThrowIfNull(units);
        var measured = tuned.Rack.Measured!;
        return new TunedWords(
            $"{tuned.Rack.Name}: {measured.Floods} floods, the last on {measured.On:uuuu-MM-dd}",
            [.. tuned.Times.Reverse().Select(time => Row(time, units.Of("mm")))],
            [.. tuned.Figures.Select(one => Words(one.Figure, one.Value))],
            [
                $"A single time differs from the fit by {tuned.OffPercent:0.0} % (root of the mean square).",
                .. tuned.LeftOut.Concat(tuned.Untold).Select(Sentence), .. Worn(measured), .. Replaced(earlier, measured),
            ]);
    }

    private static ImmutableArray<string> Row(TunedTime time, ShownUnit depths) =>
    [
        $"tier {time.Mark.TierNumber}", Timed(time, depths), time.Count.ToString(CultureInfo.InvariantCulture),
        WatchTimes.Words(time.MeasuredS), WatchTimes.Words(time.BeforeS), WatchTimes.Words(time.AfterS),
    ];

    private static string Timed(TunedTime time, ShownUnit depths)
    {
        var passes = time.Mark.Passing == FloodPassing.Rising ? "fills" : "drains";
        var resting = time.Resting.Numbers.ToList();
        return $"{passes} to {depths.Limit(time.Mark.DepthMm)}"
            + (resting.Count == 0 ? "" : $", {(resting.Count == 1 ? "tier" : "tiers")} {string.Join(", ", resting)} shut");
    }

    private static string Words(TunedFigure figure, MeasuredFigure value) => figure.Part == TunedPart.Screen
        ? $"{figure.Words}: adds a minor loss of {value.Value:0.0} +/- {value.Within:0.0}"
        : $"{figure.Words}: {value.Value:0.000} +/- {value.Within:0.000} of what is written";

    private static IEnumerable<string> Worn(MeasuredRack measured)
    {
        if (measured.PumpSpeed.Value < WornBelow)
        {
            yield return "The pump gives less than its curve says, or every branch is throttled more than written: clean the screen at its "
                + "intake and tune again, then look at valves, impeller, hose and voltage before you buy another.";
        }
    }

    private static IEnumerable<string> Replaced(MeasuredRack? earlier, MeasuredRack measured)
    {
        if (earlier is null)
        {
            yield break;
        }

        var known = TunedFigure.Of(earlier).ToList();
        var lost = known.Except(TunedFigure.Of(measured)).ToList();
        var said = $"This replaces what was measured on {earlier.On:uuuu-MM-dd}: {Listed(known)}.";
        yield return lost.Count == 0
            ? said
            : $"{said} Nothing is known any more of {Listed(lost)}: the rest of the file holds there.";
    }

    private static string Listed(IEnumerable<TunedFigure> figures) => string.Join(", ", figures.Select(figure => figure.Words));

    private static string Sentence(string phrase) => $"{char.ToUpperInvariant(phrase[0])}{phrase[1..]}.";
}
