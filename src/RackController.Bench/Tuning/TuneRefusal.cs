using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>When times are no base for a fit, and when a fit is none. Each in one line: what is wrong, and what to do.</summary>
internal static class TuneRefusal
{
    // Of how well times can be known: five seconds, or five hundredths.
    private const double MostDeviation = 5;
    private const double AtTheEdgeShare = 0.01;
    private const double SlackShare = 0.05;

    /// <summary>Why times cannot be those of the rack; null where they can.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="floods">The floods, each with a time.</param>
    public static string? OfTimes(Rack rack, ImmutableArray<TimedFlood> floods)
    {
        if (floods.Length < MeasuredRack.LeastFloods)
        {
            var so = floods.Length == 1 ? "1 flood with times is" : $"{floods.Length} floods with times are";
            return $"{so} too few to tell scatter from a slip: time at least {MeasuredRack.LeastFloods}";
        }

        if (floods.Length > MeasuredRack.MostFloods)
        {
            return $"{floods.Length} floods with times are more than a rack file can say: leave out the oldest";
        }

        var times = floods.SelectMany(flood => flood.Times).ToList();
        if (times.Find(time => time.Mark.TierNumber > rack.Tiers.Length) is { } absent)
        {
            return $"there is no tier {absent.Mark.TierNumber} on {rack.Name}: its tiers are 1 to {rack.Tiers.Length}, from the bottom";
        }

        var rested = floods.SelectMany(flood => flood.Times.Where(time => flood.Run.Resting.Contains(time.Mark.TierNumber)));
        if (rested.FirstOrDefault() is { } dry)
        {
            return $"tier {dry.Mark.TierNumber} is out of use, so nothing of it can have been timed: put it in use first";
        }

        return times.TrueForAll(time => time.Mark.Passing == FloodPassing.Falling)
            ? "no fill was timed, so nothing is known of the pump: time how long each tier takes to fill"
            : TooFast(rack, floods);
    }

    /// <summary>Why a fit is no good; null where it is.</summary>
    /// <param name="rack">The rack, as written.</param>
    /// <param name="figures">What was fitted.</param>
    /// <param name="fit">The fit.</param>
    /// <param name="times">What it was fitted to.</param>
    public static string? OfFit(
        Rack rack, IEnumerable<(TunedFigure Figure, MeasuredFigure Value)> figures, LeastSquares fit, TimedFloods times)
    {
        if (!(fit.ResidualDeviation <= MostDeviation))
        {
            var (worst, off) = times.Times.Zip(fit.Residuals.Zip(times.Deviations, (left, deviation) => left * deviation))
                .MaxBy(time => Math.Abs(time.Second / time.First.AfterS));
            return $"no pump, weeps and standpipes make such times of {rack.Name} as it is written: the best fit still has tier "
                + $"{worst.Mark.TierNumber} {Passes(worst.Mark)} {Math.Abs(off / worst.AfterS):0 %} "
                + $"{(off > 0 ? "later" : "sooner")} than timed; check its tray, branch and standpipe in the rack file";
        }

        foreach (var (figure, value) in figures)
        {
            var margin = AtTheEdgeShare * (figure.Most - figure.Least);
            if (value.Value > figure.Most - margin || (value.Value < figure.Least + margin && figure.Part != TunedPart.Screen))
            {
                return $"{figure.Words} would have to be {value.Value:0.00} of what is written, which is not believable: check what the "
                    + "rack file says of it, and the times";
            }

            if (value.Within >= value.Value)
            {
                return $"{figure.Words} comes out as {value.Value:0.00} give or take {value.Within:0.00}, which is to know nothing of it: "
                    + "time more floods";
            }
        }

        return null;
    }

    // The strongest pump that is believable fills a tray no sooner, and the widest drain empties it no sooner.
    private static string? TooFast(Rack rack, ImmutableArray<TimedFlood> floods)
    {
        var all = new TimedFloods(rack, floods);
        var pump = new TunedFigure(TunedPart.Pump, null);
        var weeps = rack.Tiers.Select(tier => new TunedFigure(TunedPart.Weep, tier.Number)).ToList();
        var blank = new MeasuredRack(
            LocalDate.MinIsoValue, floods.Length, new MeasuredFigure(1, 0), null, null,
            [.. rack.Tiers.Select(tier => new MeasuredTier(tier.Number, null, null))]);
        MeasuredRack With(MeasuredRack measured, Func<TunedFigure, double> value) =>
            weeps.Aggregate(measured, (so, weep) => weep.Put(so, new MeasuredFigure(value(weep), 0)));
        var fastest = all.Say(With(pump.Put(blank, new MeasuredFigure(pump.Most, 0)), weep => weep.Least));
        var widest = new MeasuredFigure(new TunedFigure(TunedPart.Standpipe, null).Most, 0);
        var openest = all.Say(With(blank with { Standpipe = widest }, weep => weep.Most));
        foreach (var (index, time) in all.Times.Index())
        {
            var isFill = time.Mark.Passing == FloodPassing.Rising;
            var soonest = (isFill ? fastest : openest)[index];
            if (!(time.AfterS >= soonest * (1 - SlackShare)))
            {
                return Impossible(time, soonest, isFill);
            }
        }

        return null;
    }

    private static string Impossible(TimedPassing time, double? soonestS, bool isFill)
    {
        var took = $"tier {time.Mark.TierNumber} cannot have {(isFill ? "filled" : "drained")} in "
            + Spans.Words(Duration.FromSeconds(time.AfterS));
        var why = soonestS is not { } seconds ? "by the rack file the water never reaches that mark"
            : isFill ? $"the strongest pump that goes with this curve takes {Spans.Words(Duration.FromSeconds(seconds))}"
            : $"with a weep three times as large it takes {Spans.Words(Duration.FromSeconds(seconds))}";
        return $"{took}: {why}; check the time, and the {(isFill ? "pump, branch and tray" : "weep and tray")} in the rack file";
    }

    private static string Passes(FloodMark mark) => mark.Passing == FloodPassing.Rising ? "fill" : "drain";
}
