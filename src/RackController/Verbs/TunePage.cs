using System.Globalization;
using RackController.Bench;
using RackController.Model;
using RackController.Plant;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>A fit as a person reads it: times before and after, the figures, and what they do not tell.</summary>
internal static class TunePage
{
    // Below, the pump gives so much less than its curve that somebody should look (common practice, no source).
    private const double WornBelow = 0.9;

    private static readonly string[] titles = ["tier", "timed", "times", "mean", "without `measured`", "by the fit"];

    /// <summary>Prints it.</summary>
    /// <param name="tuned">The fit.</param>
    /// <param name="earlier">What the rack file has from an earlier fit, which this one replaces; null where it has none.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(TunedRack tuned, MeasuredRack? earlier, IAnsiConsole console)
    {
        var measured = tuned.Rack.Measured!;
        console.WriteLine($"{tuned.Rack.Name}: {measured.Floods} floods, the last on {measured.On:uuuu-MM-dd}");
        console.WriteLine();
        string[][] rows = [titles, .. Enumerable.Reverse(tuned.Times).Select(Row)];
        var widths = titles.Select((_, column) => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
        {
            console.WriteLine($"  {string.Join("   ", row.Zip(widths, (cell, width) => cell.PadRight(width)))}".TrimEnd());
        }

        console.WriteLine();
        foreach (var (figure, value) in tuned.Figures)
        {
            Say(Figure(figure, value), console);
        }

        Say($"A single time differs from the fit by {tuned.OffPercent:0.0} % (root of the mean square).", console);
        foreach (var sentence in tuned.LeftOut.Concat(tuned.Untold).Select(Sentence))
        {
            Say(sentence, console);
        }

        if (measured.PumpSpeed.Value < WornBelow)
        {
            Say(
                "The pump gives less than its curve says, or every branch is throttled more than written: clean the screen at its intake "
                + "and tune again, then look at valves, impeller, hose and voltage before you buy another.", console);
        }

        if (earlier is not null)
        {
            Say(Replaced(earlier, measured), console);
        }

        console.WriteLine();
    }

    private static string Replaced(MeasuredRack earlier, MeasuredRack measured)
    {
        var known = TunedFigure.Of(earlier).ToList();
        var lost = known.Except(TunedFigure.Of(measured)).ToList();
        var said = $"This replaces what was measured on {earlier.On:uuuu-MM-dd}: {Listed(known)}.";
        return lost.Count == 0 ? said : $"{said} Nothing is known any more of {Listed(lost)}: the rest of the file holds there.";
    }

    private static string Listed(IEnumerable<TunedFigure> figures) => string.Join(", ", figures.Select(figure => figure.Words));

    private static string[] Row(TunedTime time) =>
    [
        $"tier {time.Mark.TierNumber}",
        time.Mark.Passing == FloodPassing.Rising ? $"fills to {time.Mark.DepthMm:0.#} mm" : $"drains to {time.Mark.DepthMm:0.#} mm",
        time.Count.ToString(CultureInfo.InvariantCulture), Stopwatch(time.MeasuredS), Stopwatch(time.BeforeS), Stopwatch(time.AfterS),
    ];

    private static string Stopwatch(double? seconds)
    {
        if (seconds is not { } known)
        {
            return "never";
        }

        var whole = (long)Math.Round(known);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00} min");
    }

    private static string Figure(TunedFigure figure, MeasuredFigure value) => figure.Part == TunedPart.Screen
        ? $"  {figure.Words}: adds a minor loss of {value.Value:0.0} +/- {value.Within:0.0}"
        : $"  {figure.Words}: {value.Value:0.000} +/- {value.Within:0.000} of what is written";

    private static string Sentence(string phrase) => $"{char.ToUpperInvariant(phrase[0])}{phrase[1..]}.";

    private static void Say(string text, IAnsiConsole console)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }
}
