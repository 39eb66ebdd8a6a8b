using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace RackController.Bench;

/// <summary>
/// A model that is not straight in its parameters, fitted to measurements by least squares (Levenberg and Marquardt, as MathNet
/// implements it), with confidence intervals from the Jacobian at the best fit and Student's t.
/// </summary>
/// <param name="Point">The parameters of the best fit.</param>
/// <param name="Residuals">Model less measurement, in the unit of the measurements.</param>
/// <param name="StandardErrors">Standard errors of the parameters, where all of the residuals is chance.</param>
internal sealed record LeastSquares(double[] Point, double[] Residuals, double[] StandardErrors)
{
    private const int MostRounds = 60;

    /// <summary>How many measurements there are beyond the parameters.</summary>
    public int Freedom => Residuals.Length - Point.Length;

    /// <summary>Standard deviation of what is left, in the unit of the measurements.</summary>
    public double ResidualDeviation => Math.Sqrt(Residuals.Sum(one => one * one) / Freedom);

    /// <summary>How many standard errors half a 95 % confidence interval is wide.</summary>
    public double Quantile => StudentT.InvCDF(0, 1, Freedom, 0.975);

    /// <summary>Fits.</summary>
    /// <param name="model">What the model says of every measurement.</param>
    /// <param name="steps">How far each parameter is moved to see what it does to the model; the sign is the way it is moved.</param>
    /// <param name="measured">The measurements: more than there are parameters.</param>
    /// <param name="from">Where the search begins.</param>
    /// <param name="least">The least that each parameter may be.</param>
    /// <param name="most">The most.</param>
    public static LeastSquares Fit(
        Func<double[], double[]> model, double[] steps, double[] measured, double[] from, double[] least, double[] most)
    {
        ArgumentNullException.ThrowIfNull(measured);
        var said = Vector<double>.Build.DenseOfArray(measured);

        // What stands for the place of each measurement: the model knows them by their order.
        var places = Vector<double>.Build.Dense(measured.Length, place => place);
        var objective = ObjectiveFunction.NonlinearModel(
            (point, _) => Vector<double>.Build.DenseOfArray(model(point.ToArray())), (point, _) => Slopes(model, steps, point.ToArray()),
            places, said);
        var found = new LevenbergMarquardtMinimizer(maximumIterations: MostRounds).FindMinimum(
            objective, Vector<double>.Build.DenseOfArray(from), Vector<double>.Build.DenseOfArray(least),
            Vector<double>.Build.DenseOfArray(most));
        var point = found.MinimizingPoint.ToArray();
        var left = Vector<double>.Build.DenseOfArray(model(point)) - said;

        // Its own standard errors are those of parameters that it bends to keep them within bounds.
        var slopes = Slopes(model, steps, point);
        var variance = left * left / (measured.Length - point.Length);
        var errors = slopes.TransposeThisAndMultiply(slopes).Inverse().Diagonal() * variance;
        return new LeastSquares(point, left.ToArray(), errors.PointwiseSqrt().ToArray());
    }

    /// <summary>How every measurement changes with every parameter: a row for each measurement.</summary>
    /// <param name="model">What the model says of every measurement.</param>
    /// <param name="steps">How far each parameter is moved.</param>
    /// <param name="point">The parameters.</param>
    public static Matrix<double> Slopes(Func<double[], double[]> model, double[] steps, double[] point)
    {
        var here = model(point);
        return Matrix<double>.Build.DenseOfColumns(steps.Select((step, moved) =>
        {
            var there = model([.. point.Select((value, index) => index == moved ? value + step : value)]);
            return there.Zip(here, (after, before) => (after - before) / step);
        }));
    }
}
