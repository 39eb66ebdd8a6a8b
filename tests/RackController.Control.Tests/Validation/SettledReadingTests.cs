using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Validation;

public class SettledReadingTests
{
    private static readonly MonotonicTime now = MonotonicTime.FromMilliseconds(60_000);

    [Theory]
    [InlineData(60_000, true)]
    [InlineData(58_000, true)]
    [InlineData(57_999, false)]
    [InlineData(60_001, false)]
    public void TheSameAgainIsTheSameOnlyWhileItIsFresh(long takenAtMs, bool isRepeated) =>
        Assert.Equal(isRepeated, IsRepeated(MonotonicTime.FromMilliseconds(takenAtMs)));

    [Theory]
    [InlineData(long.MinValue)]
    [InlineData(long.MaxValue)]
    public void ATimeThatIsNonsenseIsNotFresh(long nanoseconds) => Assert.False(IsRepeated(new MonotonicTime(nanoseconds)));

    [Fact]
    public void AnotherValueOrOneThatNeverSettledIsNoRepetition()
    {
        var settled = Settled(SensorKind.AirTemperature, settles: true);
        Assert.False(settled.IsRepeatedBy(Good(22), now));
        Assert.True(settled.IsRepeatedBy(Good(21), now));
        Assert.False(settled.IsRepeatedBy(Good(21) with { Quality = ReadingQuality.Corrupt }, now));
        Assert.False(Settled(SensorKind.AirTemperature, settles: false).IsRepeatedBy(Good(21), now));
    }

    [Theory]
    [InlineData(-20, true)]
    [InlineData(60, true)]
    [InlineData(-20.1, false)]
    [InlineData(60.1, false)]
    [InlineData(double.NaN, false)]
    public void AMeasuringSensorMovesToWhateverIsPlausible(double value, bool moves)
    {
        var settled = Settled(SensorKind.AirTemperature, settles: true);
        Assert.Equal(moves, settled.TryMoveTo(Good(value), now));
        Assert.Equal(moves, settled.IsRepeatedBy(Good(value), now));
    }

    [Fact]
    public void NeitherAContactNorWhatIsStaleNorWhatNeverSettledMerelyMoves()
    {
        Assert.False(Settled(SensorKind.LeakRope, settles: true).TryMoveTo(Good(1), now));
        Assert.False(Settled(SensorKind.AirTemperature, settles: false).TryMoveTo(Good(22), now));
        Assert.False(Settled(SensorKind.AirTemperature, settles: true)
            .TryMoveTo(Good(22) with { TakenAt = MonotonicTime.FromMilliseconds(57_999) }, now));
    }

    [Fact]
    public void AReadingGrowsStaleItsTimeAfterItWasTaken() => Assert.Equal(
        now + Duration.FromSeconds(2), Settled(SensorKind.AirTemperature, settles: true).GrowsStaleAt(Good(21)));

    private static Reading Good(double value) => new(value, ReadingQuality.Good, now);

    private static SettledReading Settled(SensorKind kind, bool settles)
    {
        var settled = new SettledReading(Sites.OneRack().Sensors[0] with
        {
            Kind = kind,
            PlausibleMin = -20,
            PlausibleMax = 60,
            StaleAfter = Duration.FromSeconds(2),
        });
        settled.Take(Good(21), settles);
        return settled;
    }

    private static bool IsRepeated(MonotonicTime takenAt)
    {
        var settled = new SettledReading(Sites.OneRack().Sensors[0] with { StaleAfter = Duration.FromSeconds(2) });
        settled.Take(new Reading(21, ReadingQuality.Good, now), settles: true);
        return settled.IsRepeatedBy(new Reading(21, ReadingQuality.Good, takenAt), now);
    }
}
