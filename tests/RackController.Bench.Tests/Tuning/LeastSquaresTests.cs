namespace RackController.Bench.Tests.Tuning;

/// <summary>Against Misra1a of the NIST Statistical Reference Datasets (nonlinear regression): y = b1 (1 - exp(-b2 x)), data and certified
/// values from memory.</summary>
public sealed class LeastSquaresTests
{
    private static readonly double[] x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];

    private static readonly double[] y =
        [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];

    // The two starts that NIST gives, far and near.
    [Theory]
    [InlineData(500, 1e-4)]
    [InlineData(250, 5e-4)]
    public void TheCertifiedValuesAndTheirErrorsAreFound(double b1, double b2)
    {
        var fit = LeastSquares.Fit(
            b => [.. x.Select(at => b[0] * (1 - Math.Exp(-b[1] * at)))], [1e-3, 1e-9], y, [b1, b2], [1, 1e-6], [2000, 1]);

        Assert.Equal(238.94212918, fit.Point[0], 238.9 * 1e-5);
        Assert.Equal(5.5015643181e-4, fit.Point[1], 5.5e-4 * 1e-5);
        Assert.Equal(2.7070075241, fit.StandardErrors[0], 2.7 * 1e-3);
        Assert.Equal(7.2668688436e-6, fit.StandardErrors[1], 7.3e-6 * 1e-3);
        Assert.Equal(0.10187876330, fit.ResidualDeviation, 1e-6);
        Assert.Equal(12, fit.Freedom);
    }

    // Tables of Student's t, two-sided 95 % at 12 degrees of freedom: 2.179 (from memory).
    [Fact]
    public void HalfAnIntervalIsAsWideAsStudentSays()
    {
        var fit = new LeastSquares([1, 2], new double[14], [0, 0]);
        Assert.Equal(2.179, fit.Quantile, 5e-4);
    }
}
