using CsCheck;

namespace RackController.Plant.Tests;

public class CurveTests
{
    private static readonly Gen<Curve> Curves =
        from first in Gen.Double[-1, 1]
        from second in Gen.Double[-1, 1]
        from third in Gen.Double[-1, 1]
        from last in Gen.Double[-1, 1]
        select new Curve(first, second, third, last);

    [Fact]
    public void ACurveThroughTwoStatesHasTheirValuesAndSlopes()
    {
        // The cubic t^3 - 2 t from t = 1 to t = 3, which a cubic of Hermite gives back exactly.
        var curve = Curve.Through(-1, 1, 21, 25, seconds: 2);
        Assert.Equal(2.0 * 2 * 2 - 2 * 2, curve.At(0.5), 1e-12);
        Assert.Equal(3 * 2 * 2 - 2.0, curve.Rate(seconds: 2).At(0.5), 1e-12);
    }

    [Fact]
    public void AQuantityThatRestsReadsTheSameToTheLastBit() =>
        Gen.Double[-100, 100].Select(Gen.Double[0, 1]).Sample((value, share) =>
            new Curve(value, value, value, value).At(share) == value);

    [Fact]
    public void WhatIsLeftOfACurveIsTheSameCurve() =>
        Curves.Select(Gen.Double[0, 0.99], Gen.Double[0, 1]).Sample((curve, cut, share) =>
            Math.Abs(curve.After(cut).At(share) - curve.At(cut + (1 - cut) * share)) < 1e-12);

    [Fact]
    public void TheFirstCrossingIsTheOneThatAFineLookFinds() =>
        Curves.Select(Gen.Double[-1, 1]).Sample((curve, level) =>
        {
            var rises = curve.First < level;
            var found = Crossing.First(curve, level, rises, resolution: 1e-9);
            const int Looks = 2000;
            for (var look = 0; look <= Looks; look++)
            {
                var share = look / (double)Looks;
                if (curve.At(share) >= level == rises && Math.Abs(curve.At(share) - level) > 1e-9)
                {
                    Assert.InRange(found, 0, share);
                    break;
                }
            }

            if (found <= 1)
            {
                Assert.Equal(level, curve.At(found), 1e-7);
            }
        });

    [Fact]
    public void ALevelThatIsTouchedForAnInstantIsFound()
    {
        // 4 t (1 - t) touches 1 at its middle, and nowhere else.
        var arch = new Curve(0, 4.0 / 3, 4.0 / 3, 0);
        Assert.Equal(0.5, Crossing.First(arch, 1, rises: true, 1e-12), 1e-6);
        Assert.True(double.IsPositiveInfinity(Crossing.First(arch, 1 + 1e-9, rises: true, 1e-12)));
    }
}
