using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using RackController.Model;

namespace RackController.Bench;

/// <summary>The figures that are fitted, as a model of the times: which figures, where the search begins, and what a point means.</summary>
/// <param name="times">The times.</param>
/// <param name="blank">A fit of nothing, with the tiers that were timed.</param>
/// <param name="pumpFrom">The pump's speed at which the search begins.</param>
internal sealed class TuneModel(TimedFloods times, MeasuredRack blank, double pumpFrom)
{
    // A search does not begin at a bound.
    private const double ScreenFrom = 2;

    /// <summary>Fits these figures.</summary>
    /// <param name="figures">The figures: fewer than there are times.</param>
    public LeastSquares Fit(ImmutableArray<TunedFigure> figures) => LeastSquares.Fit(
        point => times.Model(At(figures, point)), Steps(figures), times.Measured, From(figures),
        [.. figures.Select(figure => figure.Least)], [.. figures.Select(figure => figure.Most)]);

    /// <summary>How every time changes with every figure, in units of how well it can be known.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="point">Their values.</param>
    public Matrix<double> Slopes(ImmutableArray<TunedFigure> figures, double[] point) =>
        LeastSquares.Slopes(at => times.Model(At(figures, at)), Steps(figures), point);

    /// <summary>What a point means.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="point">Their values.</param>
    public MeasuredRack At(ImmutableArray<TunedFigure> figures, IEnumerable<double> point) =>
        figures.Zip(point).Aggregate(blank, (measured, one) => one.First.Put(measured, new MeasuredFigure(one.Second, 0)));

    /// <summary>
    /// Chooses, of figures that could be fitted, those that the times can tell. Each is taken if what it does to the times, beyond what
    /// the ones before it could do too, is large enough to be seen (Gram and Schmidt, in the order of the figures).
    /// </summary>
    /// <param name="figures">The figures, what matters most first.</param>
    /// <param name="untold">Those that cannot be told, each in a sentence.</param>
    public ImmutableArray<TunedFigure> Tellable(ImmutableArray<TunedFigure> figures, out ImmutableArray<string> untold)
    {
        // Two standard errors make half an interval, of times that are as good as times can be.
        const double errors = 2;
        const double sameDirectionBelow = 0.1;
        var slopes = Slopes(figures, From(figures));
        var taken = ImmutableArray.CreateBuilder<TunedFigure>();
        var directions = new List<Vector<double>>();
        var words = ImmutableArray.CreateBuilder<string>();
        foreach (var (index, figure) in figures.Index())
        {
            var all = slopes.Column(index);
            var own = directions.Aggregate(all, (left, direction) => left - direction * (direction * left));
            var ownLength = own.L2Norm();
            if (ownLength * figure.WorthKnowingWithin > errors)
            {
                taken.Add(figure);
                directions.Add(own / ownLength);
            }
            else
            {
                words.Add(ownLength < sameDirectionBelow * all.L2Norm()
                    ? $"{figure.Words} cannot be told apart from {Nearest(all, figures, taken, slopes).Words}"
                    : $"{figure.Words} cannot be told: these times hardly hang on that");
            }
        }

        untold = words.ToImmutable();
        return taken.ToImmutable();
    }

    // Of those that were taken, the one that does most nearly the same.
    private static TunedFigure Nearest(
        Vector<double> what, ImmutableArray<TunedFigure> figures, IEnumerable<TunedFigure> taken, Matrix<double> slopes) =>
        taken.MaxBy(one =>
        {
            var other = slopes.Column(figures.IndexOf(one));
            return Math.Abs(what * other) / other.L2Norm();
        })!;

    private static double[] Steps(ImmutableArray<TunedFigure> figures) => [.. figures.Select(figure => figure.Step)];

    private double[] From(ImmutableArray<TunedFigure> figures) => [.. figures.Select(figure => figure.Part switch
    {
        TunedPart.Pump => pumpFrom,
        TunedPart.Screen => ScreenFrom,
        _ => figure.AsWritten,
    })];
}
