using CsCheck;
using NodaTime;
using RackController.Testing;

namespace RackController.Bench.Tests.Measuring;

/// <summary>Charts of a run of years take no more room than those of a month, and still show what was there.</summary>
public class LongRunTests
{
    [Fact]
    public void ACurveOfAnyLengthKeepsItsPeaksAndItsOrderInFewPoints() =>
        Gen.Select(Gen.Int[Trend.MostPoints, 20 * Trend.MostPoints], Gen.Double[0.1, 1e5], Gen.Int[2, 97]).Sample(
            (count, intervalS, everyOther) =>
            {
                var trend = new Trend("depth", tolerance: 0.5);
                var peakAt = count / 3;
                for (var i = 0; i < count; i++)
                {
                    trend.Add(i * intervalS, i == peakAt ? 1e3 : i == 2 * peakAt ? -1e3 : i % everyOther);
                }

                trend.Close();
                Assert.True(trend.Points.Count <= Trend.MostPoints);
                Assert.True(trend.Points.Count > Trend.MostPoints / 16);
                Assert.Equal((peakAt * intervalS, 1e3), At(trend.Points.MaxBy(point => point.Value)));
                Assert.Equal((2 * peakAt * intervalS, -1e3), At(trend.Points.MinBy(point => point.Value)));
                Assert.Equal(trend.Points.OrderBy(point => point.Seconds), trend.Points);
            },
            iter: 10);

    [Fact]
    public void ALoadThatComesOnEveryThreeHoursForFiftyYearsIsDrawnForAsLongAsItWasOn()
    {
        var site = Sites.OneRack();
        var pump = site.Racks[0].Pump.Load;
        var timeline = new LoadTimeline(site);
        const int Floods = 146_000;
        for (var flood = 0; flood < Floods; flood++)
        {
            timeline.Note(pump, isPowered: true, Duration.FromHours(3 * flood));
            timeline.Note(pump, isPowered: false, Duration.FromHours(3 * flood) + Duration.FromMinutes(10));
        }

        var drawn = timeline.Of(pump);
        Assert.True(drawn.Count <= LoadTimeline.MostStretches);
        Assert.Equal(
            Duration.FromMinutes(10 * Floods), drawn.Aggregate(Duration.Zero, (sum, stretch) => sum + (stretch.Until - stretch.From)));
        Assert.All(drawn.Zip(drawn.Skip(1)), pair => Assert.True(pair.First.Until <= pair.Second.From));
    }

    private static (double Seconds, double Value) At(TrendPoint point) => (point.Seconds, point.Value);
}
