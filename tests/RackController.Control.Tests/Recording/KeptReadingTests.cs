using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>Which reading is worth a line on record: one that Control could answer otherwise than the one kept. The sensor's readings are
/// stale after two seconds, and its levels are 10 and 20.</summary>
public class KeptReadingTests
{
    private static readonly MonotonicTime then = MonotonicTime.FromMilliseconds(60_000);
    private static readonly MonotonicTime now = then + Duration.FromSeconds(1);
    private static readonly Sensor level = Sites.OneRack().Sensors[0] with { Kind = SensorKind.ReservoirLevel };
    private static readonly Sensor contact = Sites.OneRack().Sensors[0];

    [Theory]
    [InlineData(15, 16, false)]
    [InlineData(15, 19.9, false)]
    [InlineData(15, 20, true)]
    [InlineData(15, 10, true)]
    [InlineData(15, 25, true)]
    [InlineData(15, 5, true)]
    [InlineData(5, -100, false)]
    [InlineData(5, 9.9, false)]
    [InlineData(25, 1000, false)]
    [InlineData(25, 19, true)]
    [InlineData(20, 20, false)]
    [InlineData(20, 20.1, true)]
    [InlineData(20, 19.9, true)]
    [InlineData(double.NaN, 15, true)]
    [InlineData(double.NaN, double.NaN, false)]
    public void AValueIsNewsWhereItPassesALevel(double kept, double value, bool isNews) =>
        Assert.Equal(isNews, Kept(level, kept, [10, 20]).IsNews(Good(value), now));

    [Theory]
    [InlineData(0, 1, true)]
    [InlineData(1, 1, false)]
    public void AContactIsNewsWhereItMoves(double kept, double value, bool isNews) =>
        Assert.Equal(isNews, Kept(contact, kept, []).IsNews(Good(value), now));

    [Fact]
    public void OfWhatIsNotGoodOnlyThatItIsNotIsNews()
    {
        Assert.True(Kept(level, 15, []).IsNews(new Reading(15, ReadingQuality.Missing, now), now));
        var kept = new KeptReading(level, [10, 20]);
        kept.Keep(new Reading(0, ReadingQuality.Missing, then), then);
        Assert.False(kept.IsNews(new Reading(15, ReadingQuality.Missing, now), now));
        Assert.True(kept.IsNews(Good(15), now));
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(-2_000, false)]
    [InlineData(-2_001, true)]
    [InlineData(1, true)]
    public void ThatAReadingBecomesStaleOrOfTheFutureIsNews(int milliseconds, bool isNews)
    {
        var reading = new Reading(15, ReadingQuality.Good, now + Duration.FromMilliseconds(milliseconds));
        Assert.Equal(isNews, Kept(level, 15, [10, 20]).IsNews(reading, now));
    }

    [Fact]
    public void WhatIsStaleStaysNoNewsWhateverItSays()
    {
        var kept = new KeptReading(level, [10, 20]);
        kept.Keep(new Reading(15, ReadingQuality.Good, then + -Duration.FromSeconds(3)), then);
        Assert.False(kept.IsNews(new Reading(25, ReadingQuality.Good, then + -Duration.FromSeconds(3)), now));
    }

    [Fact]
    public void ItIsHeldAtItsAge()
    {
        var kept = Kept(level, 15, []);
        Assert.Equal(new Reading(15, ReadingQuality.Good, now), kept.At(now));
        kept.Keep(new Reading(15, ReadingQuality.Good, then + -Duration.FromSeconds(1)), then);
        Assert.Equal(now + -Duration.FromSeconds(1), kept.At(now).TakenAt);
        kept.Keep(new Reading(15, ReadingQuality.Good, then + -Duration.FromSeconds(3)), then);
        Assert.Equal(then + -Duration.FromSeconds(3), kept.At(now).TakenAt);
        kept.Keep(new Reading(15, ReadingQuality.Good, then + Duration.FromHours(3)), then);
        Assert.Equal(now + Duration.FromHours(3), kept.At(now).TakenAt);
        kept.Keep(new Reading(15, ReadingQuality.Good, then + Duration.FromDays(30)), then);
        Assert.Equal(now + Duration.FromDays(1), kept.At(now).TakenAt);
    }

    [Theory]
    [InlineData(15, 0, ReadingQuality.Good, false)]
    [InlineData(16, 0, ReadingQuality.Good, true)]
    [InlineData(15, -1, ReadingQuality.Good, true)]
    [InlineData(16, -1, ReadingQuality.Missing, false)]
    public void AnotherValueOrAgeIsAnotherReading(double value, int milliseconds, ReadingQuality quality, bool isOther)
    {
        var reading = new Reading(value, quality, now + Duration.FromMilliseconds(milliseconds));
        Assert.Equal(isOther, Kept(level, 15, [10, 20]).IsOther(reading, now));
    }

    private static Reading Good(double value) => new(value, ReadingQuality.Good, now);

    private static KeptReading Kept(Sensor sensor, double value, double[] levels)
    {
        var kept = new KeptReading(sensor, levels);
        kept.Keep(new Reading(value, ReadingQuality.Good, then), then);
        return kept;
    }
}
