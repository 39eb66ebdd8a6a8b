using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>How sure fitted figures are: by what the times scatter, and by what they do not tell.</summary>
internal static class TuneInterval
{
    /// <summary>Times that agree better than times can be known do so by luck, or because the same thing was off every time: nobody is
    /// made surer by it.</summary>
    private const double LeastDeviation = 1;

    /// <summary>A weep or standpipe that could not be told passes what is written give or take this share, as a coefficient of
    /// discharge may be off (common practice, no source).</summary>
    private const double UntoldWithin = 0.2;

    private const int Decimals = 3;

    /// <summary>The figures with their 95 % intervals, rounded as they are written down.</summary>
    /// <param name="model">The model.</param>
    /// <param name="figures">The figures that were fitted.</param>
    /// <param name="untold">The figures that were left as they are written.</param>
    /// <param name="fit">The fit.</param>
    public static ImmutableArray<MeasuredFigure> Of(
        TuneModel model, ImmutableArray<TunedFigure> figures, ImmutableArray<TunedFigure> untold, LeastSquares fit)
    {
        var slopes = model.Slopes(figures, fit.Point);
        var ways = slopes.TransposeThisAndMultiply(slopes).Inverse();
        var shifts = untold.Where(figure => figure.Part is TunedPart.Weep or TunedPart.Standpipe).Select(figure =>
            ways * (slopes.Transpose() * model.Slopes(figures.Add(figure), [.. fit.Point, figure.AsWritten]).Column(figures.Length))
            * UntoldWithin).ToList();
        var scale = fit.Quantile * Math.Max(1, LeastDeviation / fit.ResidualDeviation);
        return
        [
            .. fit.Point.Select((value, index) =>
            {
                var chance = scale * fit.StandardErrors[index];
                var within = Math.Sqrt(chance * chance + shifts.Sum(shift => shift[index] * shift[index]));
                return new MeasuredFigure(Math.Round(value, Decimals), Math.Max(Math.Round(within, Decimals), Math.Pow(10, -Decimals)));
            }),
        ];
    }
}
