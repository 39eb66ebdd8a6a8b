using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>
/// Fits a rack's pump, weeps, standpipes and branches to times of real floods, so that the simulated rack does what this rack does. It
/// fits what the times can tell and leaves the rest as the rack file has it.
/// </summary>
public static class RackTuning
{
    // A branch is taken to stand otherwise than written only where its tier fills so much sooner or later than all others explain.
    private const double BranchOffShare = 0.02;
    private const double BranchOffErrors = 3;

    private static readonly double[] pumpSpeeds = [.. Enumerable.Range(7, 19).Select(step => 0.05 * step)];

    /// <summary>Fits.</summary>
    /// <param name="rack">The rack; what was measured of it before is not looked at.</param>
    /// <param name="given">The floods.</param>
    /// <param name="between">Called between simulations, milliseconds apart; what it throws ends the fit. Null for nobody.</param>
    public static TuneOutcome Of(Rack rack, TuneTimes given, Action? between = null)
    {
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(given);
        var written = rack with { Measured = null };
        var kept = TuneOutliers.LeaveOut(given.Floods, out var leftOut).Where(flood => !flood.Times.IsEmpty).ToImmutableArray();
        if (TuneRefusal.OfTimes(written, kept) is { } nonsense)
        {
            return new TuneOutcome(null, nonsense);
        }

        var timed = kept.SelectMany(flood => flood.Times).Select(time => time.Mark.TierNumber).Distinct().Order();
        var blank = new MeasuredRack(
            given.On, kept.Length, new MeasuredFigure(1, 0), null, null, [.. timed.Select(tier => new MeasuredTier(tier, null, null))]);
        var times = new TimedFloods(written, kept, between);
        var model = new TuneModel(times, blank, PumpFrom(times, blank));
        var figures = model.Tellable([.. Figures(times)], out var untold);
        var fit = Fit(model, blank, times, ref figures, ref untold);
        var values = Values(model, blank, figures, fit);
        return TuneRefusal.OfFit(written, figures.Zip(values), fit, times) is { } misfit
            ? new TuneOutcome(null, misfit)
            : new TuneOutcome(Tuned(written, blank, times, [.. figures.Zip(values)]) with { LeftOut = leftOut, Untold = untold }, null);
    }

    // What matters most first: what later ones could do as well is taken to be of the earlier ones.
    private static IEnumerable<TunedFigure> Figures(TimedFloods times)
    {
        yield return new TunedFigure(TunedPart.Pump, null);
        var drained = times.Times.Where(time => time.Mark.Passing == FloodPassing.Falling).Select(time => time.Mark.TierNumber);
        foreach (var tier in drained.Distinct().Order())
        {
            yield return new TunedFigure(TunedPart.Weep, tier);
        }

        yield return new TunedFigure(TunedPart.Standpipe, null);
        yield return new TunedFigure(TunedPart.Screen, null);
    }

    private static IEnumerable<TunedFigure> Everything(MeasuredRack blank) =>
        blank.Tiers.Select(tier => new TunedFigure(TunedPart.Weep, tier.Number)).Append(new TunedFigure(TunedPart.Standpipe, null));

    // Far from the best fit the times may run the other way, or a tray never fill: so the pump is looked for from end to end first.
    private static double PumpFrom(TimedFloods times, MeasuredRack blank) => pumpSpeeds.MinBy(speed =>
        times.Model(blank with { PumpSpeed = new MeasuredFigure(speed, 0) }).Zip(times.Measured, (said, measured) =>
            (said - measured) * (said - measured)).Sum());

    private static ImmutableArray<MeasuredFigure> Values(
        TuneModel model, MeasuredRack blank, ImmutableArray<TunedFigure> figures, LeastSquares fit) =>
        TuneInterval.Of(model, figures, [.. Everything(blank).Except(figures)], fit);

    private static LeastSquares Fit(
        TuneModel model, MeasuredRack blank, TimedFloods times, ref ImmutableArray<TunedFigure> figures, ref ImmutableArray<string> untold)
    {
        var fit = model.Fit(figures);
        while (OddBranch(times, fit, figures) is { } branch)
        {
            if (!model.Tellable(figures.Add(branch), out _).Contains(branch))
            {
                untold = untold.Add($"{branch.Words} may stand otherwise than written, and these times cannot tell how far");
                break;
            }

            figures = figures.Add(branch);
            fit = model.Fit(figures);
        }

        // What is no more than its interval is none.
        var screen = new TunedFigure(TunedPart.Screen, null);
        if (figures.IndexOf(screen) is >= 0 and var index
            && Values(model, blank, figures, fit)[index] is var value && value.Within >= value.Value)
        {
            untold = untold.Add("the screen is as clean as these times can tell");
            figures = figures.Remove(screen);
            fit = model.Fit(figures);
        }

        return fit;
    }

    // The tier that fills most otherwise than the fit has it; null where none does beyond chance. One tier stays as written, for what
    // all branches have in common is the pump's.
    private static TunedFigure? OddBranch(TimedFloods times, LeastSquares fit, ImmutableArray<TunedFigure> figures)
    {
        var known = figures.Where(figure => figure.Part == TunedPart.Branch).Select(figure => figure.Tier).ToList();
        var rising = times.Times.Index().Where(time => time.Item.Mark.Passing == FloodPassing.Rising)
            .GroupBy(time => time.Item.Mark.TierNumber).ToList();
        if (known.Count + 1 >= rising.Count)
        {
            return null;
        }

        var odd = rising.Where(tier => !known.Contains(tier.Key))
            .Select(tier => (Number: tier.Key, Off: Off(tier.Select(time => fit.Residuals[time.Index] * times.Deviations[time.Index]
                / time.Item.AfterS))))
            .Where(tier => Math.Abs(tier.Off.Mean) > Math.Max(BranchOffShare, BranchOffErrors * tier.Off.Error))
            .ToList();
        return odd.Count == 0 ? null : new TunedFigure(TunedPart.Branch, odd.MaxBy(tier => Math.Abs(tier.Off.Mean)).Number);
    }

    private static (double Mean, double Error) Off(IEnumerable<double> shares)
    {
        var all = shares.ToList();
        var mean = all.Average();
        var variance = all.Count > 1 ? all.Sum(one => (one - mean) * (one - mean)) / (all.Count - 1) : 0;
        return (mean, Math.Sqrt(variance / all.Count));
    }

    private static TunedRack Tuned(
        Rack written, MeasuredRack blank, TimedFloods times, ImmutableArray<(TunedFigure Figure, MeasuredFigure Value)> figures)
    {
        var measured = figures.Aggregate(blank, (all, one) => one.Figure.Put(all, one.Value));
        var (before, after) = (times.Say(null), times.Say(measured));
        return new TunedRack(
            written with { Measured = measured }, figures,
            [
                .. times.Times.Index().GroupBy(time => (time.Item.Mark, Resting: times.Resting[time.Index]))
                    .OrderBy(kind => kind.Key.Mark.TierNumber).ThenBy(kind => kind.Key.Mark.Passing)
                    .ThenBy(kind => kind.Key.Resting.Bits)
                    .Select(kind => new TunedTime(
                        kind.Key.Mark, kind.Count(), kind.Average(time => time.Item.AfterS),
                        Mean(kind.Select(time => before[time.Index])), Mean(kind.Select(time => after[time.Index])))
                    {
                        Resting = kind.Key.Resting,
                    }),
            ],
            [], [], 100 * Math.Sqrt(times.Times.Zip(after, (time, said) => Squared(said / time.AfterS - 1 ?? 1)).Average()));
    }

    private static double Squared(double value) => value * value;

    private static double? Mean(IEnumerable<double?> values)
    {
        var all = values.ToList();
        return all.Contains(null) ? null : all.Average();
    }
}
