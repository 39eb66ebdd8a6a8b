using CsCheck;
using NodaTime;

namespace RackController.Service.Tests;

public sealed class SensorTrendTests
{
    private static readonly Instant noon = Happenings.Noon;
    private static readonly HistorySpan week = new(noon, noon + Duration.FromDays(7));

    [Fact]
    public void ThinningLosesNoPeakAndItsMeansLieBetween() => Gen.Double[-50, 50].Array[1, 3000].Sample(values =>
    {
        var samples = values.Select((value, at) => new Sample(noon + week.Length * at / values.Length, "air", value));

        var points = Assert.Single(SensorTrend.Of(samples, ["air"], week)).Points;

        Assert.InRange(points.Length, 1, SensorTrend.MostPoints);
        Assert.Equal(values.Max(), points.Max(point => point.Most));
        Assert.Equal(values.Min(), points.Min(point => point.Least));
        Assert.All(points, point => Assert.InRange(point.Mean, point.Least - 1e-9, point.Most + 1e-9));
    });

    [Fact]
    public void AMinuteOfItsOwnStaysAsItWas()
    {
        var hour = new HistorySpan(noon, noon + Duration.FromHours(1));
        var samples = Enumerable.Range(0, 60).Select(minute => new Sample(noon + Duration.FromMinutes(minute), "air", minute * 0.5));

        var points = Assert.Single(SensorTrend.Of(samples.Reverse(), ["air"], hour)).Points;

        Assert.Equal(Enumerable.Range(0, 60).Select(minute => (noon + Duration.FromMinutes(minute), minute * 0.5)),
            points.Select(point => (point.At, point.Mean)));
        Assert.DoesNotContain(points.Skip(1), point => point.IsAfterGap);
    }

    [Fact]
    public void WhereNothingWasKnownIsAGap()
    {
        var hour = new HistorySpan(noon, noon + Duration.FromHours(1));
        Sample[] samples = [At(0, 1), At(1, 1), At(2, null), At(3, 2), At(4, 2), At(20, 3), At(21, 3)];

        var points = Assert.Single(SensorTrend.Of(samples, ["air"], hour)).Points;

        Assert.Equal([true, false, true, false, true, false], points.Select(point => point.IsAfterGap));
    }

    private static Sample At(int minute, double? value) => new(noon + Duration.FromMinutes(minute), "air", value);
}
